import { describe, expect, test } from 'vitest';
import { meterStates } from '../../src/plugs/circuit.ts';
import { meterCard } from '../../src/plugs/meter.ts';
import { plugsOf } from '../../src/plugs/parts.ts';
import type { HalfName, PlugHalf } from '../../src/sheet/plugs.ts';
import { testModel } from '../support/model.ts';

const { vocabulary } = testModel().rulebook;
const half = (of: HalfName, ...circuits: readonly string[]): PlugHalf => ({
	plug: 'dash',
	half: of,
	pins: circuits.map((circuit, at) => ({ pin: String(at + 1), circuit })),
});
const card = (...halves: readonly PlugHalf[]) => meterCard(plugsOf(halves, vocabulary, () => undefined, 'us')!.reading);
const cardLines = (...halves: readonly PlugHalf[]) =>
	card(...halves).map(({ half, circuit, state, expect }) => `${half} ${circuit}, ${state}: ${expect}`);

describe('the meter card', () => {
	test("looks into the harness that leads to the part: the sensor from the engine's half, the feed from the car's", () => {
		const lines = card(
			half('engine', 'coolant temperature', 'run and crank feed'),
			half('car', 'coolant temperature', 'run and crank feed'),
		);
		expect(lines.filter(({ circuit }) => /coolant/i.test(circuit)).every(({ half }) => half === 'engine')).toBe(true);
		expect(lines.filter(({ circuit }) => /run/i.test(circuit)).every(({ half }) => half === 'car')).toBe(true);
		expect(new Set(lines.map(({ pin }) => pin))).toEqual(new Set(['1', '2']));
	});

	test('a feed that is live in run and crank reads battery in both, and nothing with the key off', () => {
		const lines = cardLines(half('engine', 'run and crank feed'), half('car', 'run and crank feed'));
		expect(lines.some(line => /key-off: .*0 V/.test(line))).toBe(true);
		expect(lines.some(line => /key-on: .*battery/.test(line))).toBe(true);
		expect(lines.some(line => /crank: .*(battery|V)/.test(line))).toBe(true);
	});

	test('an accessory feed is dead in crank: the classic mistake', () => {
		const lines = cardLines(half('engine', 'accessory feed'), half('car', 'accessory feed'));
		expect(lines.find(line => line.includes(', crank:'))).toMatch(/0 V|dead/);
	});

	test('nothing is metered at an airbag, whatever else is said there, nor at the controller itself', () => {
		expect(card(half('engine', 'airbag', 'SRS module 5 V reference'), half('car', 'restraint', 'airbag'))).toEqual([]);
		const lines = card(half('engine', 'coolant temperature'), half('controller', 'coolant temperature'));
		expect(lines.length).toBeGreaterThan(0);
		expect(lines.every(({ half }) => half === 'engine')).toBe(true);
	});

	test('goes through the states in order, ohms only with the battery off', () => {
		const all = vocabulary.circuits.map(({ id }) => id);
		const lines = card(half('engine', ...all), half('car', ...all));
		const order = lines.map(({ state }) => meterStates.indexOf(state));
		expect(order).toEqual([...order].sort((a, b) => a - b));
		for (const { expect: reads, state, circuit } of lines)
			if (/\bk?ohm\b/.test(reads)) {
				expect(`${circuit}: ${reads}`).toMatch(state === 'key-off' ? /\(battery off\)$/ : /^never/);
			}
	});

	test('every circuit that a meter can look at has a line, with what it means when it reads otherwise', () => {
		const without = vocabulary.circuits.filter(({ id }) => {
			const lines = card(half('engine', id), half('car', id));
			expect(lines.every(({ otherwise }) => otherwise.trim() !== '')).toBe(true);
			return lines.length === 0;
		});
		// Ends at the controller on both sides of the plug, or is an airbag.
		for (const { id, ends } of without) expect(id === 'airbag' || ends[0] === 'controller', id).toBe(true);
	});
});
