import { describe, expect, test } from 'vitest';
import { stages } from '../../src/rulebook/rulebook.ts';
import { emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { audited } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';

const boosted = buildSheet('boosted');
const auditWithout = (...ids: string[]) =>
	audited(
		ids.reduce((sheet, id) => withAnswer(sheet, id, undefined), boosted),
		{ next: true },
	).audit;

describe('what to measure next', () => {
	test('names answers that are missing or guessed, with the rules that they turn', () => {
		const { next } = auditWithout('ignition.gap', 'fuel.pump_voltage', 'harness.pump_cutoff');
		expect(next.map(({ answer }) => answer)).toEqual(expect.arrayContaining(['ignition.gap', 'harness.pump_cutoff']));
		expect(next.find(({ answer }) => answer === 'ignition.gap')!.flips).toContain('ignition.gap-too-wide');
	});

	test('asks first for what the earliest stage waits for, and for a mere look that settles many lines; then by weight', () => {
		const { next } = audited(emptySheet('nothing'), { next: true }).audit;
		const stageOf = new Map(testModel().rulebook.rules.map(({ id, stage }) => [id, stages.indexOf(stage)]));
		// What is ticked off as done, one by one, waits for its stage: it cannot be had early.
		const ticked = new Set(testModel().rulebook.questions.flatMap(({ id, kind }) => (kind === 'several' ? [id] : [])));
		const turns = next.map(({ answer, flips, effort }) =>
			['known', 'paper', 'look'].includes(effort) && flips.length >= 6 && !ticked.has(answer)
				? 0
				: Math.min(...flips.map(id => stageOf.get(id)!)),
		);
		expect(new Set(turns).size).toBeGreaterThan(3);
		expect(turns).toEqual([...turns].sort((a, b) => a - b));
		for (const [index, { weight }] of next.entries())
			if (turns[index + 1] === turns[index]) expect(next[index + 1]!.weight).toBeLessThanOrEqual(weight);
	});

	test('asks nothing that only a running engine shows while what it fires on is open', () => {
		const { next } = auditWithout('fuel.hose', 'charging.voltage_running', 'fuel.pump_voltage');
		const places = next.map(({ answer }) => answer);
		expect(places).toEqual(expect.arrayContaining(['fuel.hose', 'charging.voltage_running']));
		expect(places.indexOf('fuel.hose')).toBeLessThan(places.indexOf('charging.voltage_running'));
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

	test('proposes a curve or a list of loads by the lines that cannot be decided without it', () => {
		for (const id of ['sensors.meter_curve', 'charging.loads']) {
			const { next, findings } = auditWithout(id);
			const waiting = findings.filter(({ missing }) => missing.includes(id)).map(({ rule }) => rule);
			expect(waiting.length).toBeGreaterThan(1);
			const { flips, why } = next.find(({ answer }) => answer === id)!;
			expect(flips).toEqual([...new Set(waiting)].sort());
			expect(why).toContain(`${flips.length} items on the list cannot be judged`);
		}
	});

	test('puts the easier of two equal answers first', () => {
		const { next } = auditWithout('harness.controller_ground', 'engine.leakdown', 'injectors.seals', 'fuel.tank_hose');
		const stageOf = new Map(testModel().rulebook.rules.map(({ id, stage }) => [id, stages.indexOf(stage)]));
		const cost = { known: 0, paper: 1, look: 2, gauge: 3, test: 4 };
		for (const [index, { weight, effort }] of next.entries()) {
			const after = next[index + 1];
			const turn = (at: (typeof next)[number]) => Math.min(...at.flips.map(id => stageOf.get(id)!));
			if (after?.weight === weight && turn(after) === turn(next[index]!))
				expect(cost[effort]).toBeLessThanOrEqual(cost[after.effort]);
		}
	});
});
