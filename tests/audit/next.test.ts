import { describe, expect, test } from 'vitest';
import { withAnswer } from '../../src/sheet/sheet.ts';
import { audited } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const boosted = buildSheet('boosted');
const auditWithout = (...ids: string[]) =>
	audited(
		ids.reduce((sheet, id) => withAnswer(sheet, id, undefined), boosted),
		{ next: true },
	).audit;

describe('what to measure next', () => {
	test('names answers that are missing or guessed, with the rules that they turn, heaviest first', () => {
		const { next } = auditWithout('ignition.gap', 'fuel.pump_voltage', 'harness.pump_cutoff');
		expect(next.map(({ answer }) => answer)).toEqual(expect.arrayContaining(['ignition.gap', 'harness.pump_cutoff']));
		expect(next.find(({ answer }) => answer === 'ignition.gap')!.flips).toContain('ignition.gap-too-wide');
		const weights = next.map(({ weight }) => weight);
		expect(weights).toEqual([...weights].sort((a, b) => b - a));
	});

	test('never asks for what was measured or read off a paper', () => {
		for (const { known } of auditWithout().next) expect([null, 'not-known', 'estimate']).toContain(known);
	});

	test('tries an answer for which a usual value stands in between the ends of that usual value alone', () => {
		const { next } = auditWithout('injectors.count', 'engine.volumetric_efficiency', 'injectors.plug_engine');
		const places = next.map(({ answer }) => answer);
		// Eight injectors have no spread; a filling of 65 to 110 % would turn a dozen lines.
		expect(places).not.toContain('injectors.count');
		expect(places).toContain('injectors.plug_engine');
		const filling = next.find(({ answer }) => answer === 'engine.volumetric_efficiency');
		expect(filling?.flips.length ?? 0).toBeLessThan(5);
	});

	test('proposes a choice that a usual one stands in for', () => {
		const stood = withAnswer(boosted, 'engine.history', { value: ['stood-a-year'] });
		const wired = withAnswer(stood, 'build.stage', { value: 'wired' });
		const { next, findings } = audited(wired, { next: true }).audit;
		const dry = findings.find(({ rule }) => rule === 'engine.not-primed-after-standing');
		expect(dry).toMatchObject({ verdict: 'fails', assumed: ['engine.oil_primed'] });
		expect(next.find(({ answer }) => answer === 'engine.oil_primed')!.flips).toContain(dry!.rule);
	});

	test('proposes a curve or a list of loads by the lines that cannot be told without it', () => {
		for (const id of ['sensors.meter_curve', 'charging.loads']) {
			const { next, findings } = auditWithout(id);
			const waiting = findings.filter(({ missing }) => missing.includes(id)).map(({ rule }) => rule);
			expect(waiting.length).toBeGreaterThan(1);
			const { flips, why } = next.find(({ answer }) => answer === id)!;
			expect(flips).toEqual([...new Set(waiting)].sort());
			expect(why).toContain(`${flips.length} lines cannot be told`);
		}
	});

	test('puts the easier of two equal answers first', () => {
		const { next } = auditWithout('harness.controller_ground', 'engine.leakdown', 'injectors.seals', 'fuel.tank_hose');
		const cost = { look: 0, gauge: 1, test: 2 };
		for (const [index, { weight, effort }] of next.entries()) {
			const after = next[index + 1];
			if (after?.weight === weight) expect(cost[effort]).toBeLessThanOrEqual(cost[after.effort]);
		}
	});
});
