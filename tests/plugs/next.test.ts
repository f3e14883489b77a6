import { describe, expect, test } from 'vitest';
import type { PlugHalf } from '../../src/sheet/plugs.ts';
import { audited } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const pins = (half: PlugHalf['half'], ...circuits: readonly string[]): PlugHalf => ({
	plug: 'dash',
	half,
	pins: circuits.map((circuit, at) => ({ pin: String(at + 1), circuit })),
});
const sheet = buildSheet('boosted');
const { next } = audited(
	{
		...sheet,
		plugs: [pins('engine', '', '', '', ''), pins('car', 'battery feed', 'ECT', 'empty', '')],
	},
	{ next: true },
).audit;
const at = (pin: number) => next.find(({ answer }) => answer === `plugs: dash ${pin}`);

describe('what to find out next, of pins', () => {
	test('a wire nobody traced may burn on a feed, kill on a signal, and neither on an empty cavity', () => {
		expect(at(1)?.flips).toEqual(expect.arrayContaining(['pins.meet-and-burn', 'pins.meet-and-kill']));
		expect(at(1)?.why).toMatch(/dead short/);
		expect(at(2)?.flips).toContain('pins.meet-and-kill');
		expect(at(2)?.flips).not.toContain('pins.meet-and-burn');
		expect(at(3)?.flips ?? []).not.toContain('pins.meet-and-kill');
		expect(at(4)?.flips).toContain('pins.meet-and-burn');
	});

	test('the reading that settles most comes first', () => {
		const order = next.flatMap(({ answer }) => /^plugs: dash (\d)$/.exec(answer)?.[1] ?? []);
		expect(order.slice(0, 2).sort()).toEqual(['1', '4']);
		expect(at(1)!.weight).toBeGreaterThan(at(2)!.weight);
	});

	test('what holds up the first crank stands before what only holds up a later stage', () => {
		const places = next.map(({ answer }) => answer);
		const later = next.findIndex(({ flips }) => flips.every(rule => rule.startsWith('boost.')));
		expect(places.indexOf('plugs: dash 1')).toBeGreaterThanOrEqual(0);
		if (later >= 0) expect(places.indexOf('plugs: dash 1')).toBeLessThan(later);
	});
});
