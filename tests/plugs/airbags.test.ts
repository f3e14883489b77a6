import { describe, expect, test } from 'vitest';
import { meterCard } from '../../src/plugs/meter.ts';
import type { Pin, PlugHalf } from '../../src/sheet/plugs.ts';
import { audited } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { vocabulary } = testModel().rulebook;
const half = (of: PlugHalf['half'], pins: readonly Pin[]): PlugHalf => ({
	plug: 'dash',
	half: of,
	outside: true,
	pins,
});

/** An airbag against every circuit, from either half, by each of its words, with all that may be wrong with a wire. */
const others = vocabulary.circuits.filter(({ id }) => id !== 'airbag').map(({ id }) => id);
const words = ['airbag', 'air bag', 'SRS module', 'restraint', 'seat pretensioner'];
const bags = others.map(
	(_, at): Pin => ({
		pin: String(at + 1),
		circuit: words[at % words.length]!,
		wire: 'yellow',
		gauge: 30,
		terminal: 1.5,
		fused: 100,
		twisted: false,
		seal: false,
		splice: `s${at % 7}`,
	}),
);
const wires = others.map((circuit, at): Pin => ({ pin: String(at + 1), circuit }));
const judged = (plugs: readonly PlugHalf[]) => audited({ ...buildSheet('boosted'), plugs });

describe.each([
	['on the engine half', [half('engine', bags), half('car', wires)]],
	['on the car half', [half('engine', wires), half('car', bags)]],
] as const)('a wire of the airbags %s', (_, plugs) => {
	const { audit, plugs: read } = judged(plugs);
	const names = new Set(bags.map(({ pin }) => `dash ${pin}`));
	const about = audit.findings.filter(
		({ rule, subject, verdict }) =>
			rule.startsWith('pins.') && verdict !== 'does-not-apply' && (subject === 'airbag' || names.has(subject ?? '')),
	);

	test('against every other circuit fails for a person, before it cranks; the one thing to do is to leave it alone', () => {
		const fails = about.filter(({ rule, verdict }) => rule === 'pins.airbag-wire' && verdict === 'fails');
		expect(fails.length).toBe(others.length);
		for (const { stage, harm, do: what, cautions, prove } of fails) {
			expect([stage, harm, what]).toEqual(['crank', 'person', ['Leave alone.']]);
			expect(cautions).toContain('airbag');
			expect(prove).not.toMatch(/meter|ohm/i);
		}
	});

	test('is in no other finding that fails: nobody is asked to meter, cut or move it', () => {
		// What the wire of the other half lacks by itself is reported of that one, not of this.
		const failing = about.filter(({ rule, verdict }) => verdict === 'fails' && rule !== 'pins.airbag-wire');
		for (const { why, rule } of failing) expect(`${rule} ${why}`).not.toMatch(/air ?bag|SRS|restraint|pretensioner/i);
		expect(failing.map(({ rule }) => rule).filter(rule => /meet|moved|twice|open-end/.test(rule))).toEqual([]);
	});

	test('has no line on the meter card and nothing in the plan but to leave it alone', () => {
		const own = meterCard(read!.reading).filter(({ circuit }) => /air ?bag/i.test(circuit));
		expect(own).toEqual([]);
		const rows = read!.reading.pairs
			.flatMap(({ rows }) => rows)
			.filter(({ left, right }) => left?.airbag || right?.airbag);
		expect(rows.length).toBe(others.length);
		for (const { acts, toPin } of rows) {
			expect(acts.map(({ kind }) => kind)).toEqual(['leave-alone']);
			expect(toPin).toBeNull();
		}
	});
});
