import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { slotNamed } from '../../src/graph/graph.ts';
import { solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { movesWithBoost } from '../../src/rulebook/compile/boost-limit.ts';
import { Judge } from '../../src/rulebook/judge.ts';
import { namesRead } from '../../src/rulebook/reads.ts';
import { type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { changed } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { randomSheet } from '../support/random-sheet.ts';
import { close, is, num, psi, sheetOf, solved } from './by-hand.ts';

const { rulebook, graph } = testModel();
const boosted = buildSheet('boosted');
const q = (answers: Parameters<typeof sheetOf>[0]) => solved(sheetOf(answers, boosted));

const limited = rulebook.rules.filter(rule => rule.limit.length > 0 && movesWithBoost(rule, graph));

const judge = new Judge({ ...rulebook, rules: limited }, graph.slotOf);
const read = limited.flatMap(rule => [...namesRead(rule)]).filter(name => graph.slotOf.has(name));

/** What fails of the rules that name a limit, at a boost in psi. */
function failing(sheet: Sheet, boost: number): string[] {
	const at = withAnswer(sheet, 'boost.target', num(boost, 'psi'));
	const state = solve(graph, givenAnswers(at, rulebook.questions), new Map(), read);
	return judge.judge(state).flatMap(({ rule, verdict }) => (verdict === 'fails' ? [rule.id] : []));
}

const weak = {
	pistons: { 'engine.pistons': is('cast') },
	hypereutectic: { 'engine.pistons': is('hypereutectic') },
	gasket: { 'engine.head_gasket': is('composite') },
	rings: { 'engine.ring_gap': num(0.0245, 'in') },
	compressor: { 'boost.compressor_choke': num(44, 'lb/min') },
	sensor: {
		'sensors.meter_kind': is('none-speed-density'),
		'sensors.map_full_scale': num(150, 'kPa abs'),
	},
	charge: { 'boost.intercooler_effectiveness': num(20, '%') },
	injectors: { 'injectors.rated_flow': num(36, 'lb/h') },
} as const;

describe('no rule that can cost the engine and moves with boost', () => {
	test.each(Object.entries({ 'as it is': {}, ...weak }))(
		'fails under the lowest limit worked out: %s',
		(_, answers) => {
			// A clean log stands over the calculated knock, whose rule speaks at the near end of its band.
			const sheet = changed(boosted, { ...answers, 'ignition.knock_seen': is('clean') });
			const lowest = Number(solved(sheet)('boost.lowest_limit').value) / psi;
			expect(lowest).toBeGreaterThan(2);
			expect(failing(sheet, lowest * 0.99)).toEqual([]);
			expect(failing(sheet, lowest * 1.02).length).toBeGreaterThan(0);
		},
	);

	test('nor on any other boosted build', () => {
		fc.assert(
			fc.property(fc.integer(), start => {
				const sheet = randomSheet(rulebook, graph, chance(start), 'boosted');
				const { values } = solve(graph, givenAnswers(sheet, rulebook.questions), new Map(), ['boost.lowest_limit']);
				const lowest = Number(values[slotNamed(graph, 'boost.lowest_limit')]) / psi;
				fc.pre(lowest > 0.5);
				expect(failing(sheet, lowest * 0.99)).toEqual([]);
			}),
			{ seed, numRuns: counts.ladders, maxSkipsPerRun: 1000 },
		);
	});

	test('is without a limit or a reason', () => {
		for (const rule of rulebook.rules.filter(({ harm }) => harm === 'engine'))
			if (movesWithBoost(rule, graph)) expect(rule.limit.length > 0, rule.id).toBe(rule.no_limit === '');
		expect(limited.length).toBeGreaterThan(12);
	});
});

describe('a limit of a part, by hand', () => {
	test('ring gap: 0.006 of the bore is enough to 12 psi', () => {
		const gap = q({ 'engine.bore': num(4, 'in'), 'engine.ring_gap': num(0.025, 'in') })('engine.ring_gap_boost_limit');
		close(gap.value, 12 * psi, 'ring gap', 1e-3);
	});

	test('pressure sensor: its top less 10 kPa less the open air', () => {
		const all = q(weak.sensor);
		const ambient = Number(all('air.ambient_pressure').value);
		close(all('sensors.map_boost_limit').value, 140e3 - ambient, 'sensor', 1e-4);
		expect(q({})('sensors.map_boost_limit').value).toBeNull();
	});

	test('charge air: isentropic heat over efficiency, less what the core takes, comes to 80 degC', () => {
		const all = q(weak.charge);
		const boost = Number(all('boost.charge_temp_boost_limit').value);
		const ambient = Number(all('air.ambient_pressure').value);
		const outside = Number(all('build.hot_day').value);
		const ratio = (ambient + boost + 1 * psi) / (ambient - 1000);
		close(outside + (0.8 * outside * (ratio ** (2 / 7) - 1)) / 0.72, 353.15, 'charge', 1e-3);
	});

	test('forged pistons and steel gaskets have none', () => {
		expect(q({})('engine.piston_boost_limit').value).toBeNull();
		expect(q({})('engine.gasket_boost_limit').value).toBeNull();
	});

	test('an open engine or a map that nobody has does not hold up the others', () => {
		const without = q({ 'engine.ring_gap': undefined, 'boost.compressor_choke': undefined });
		expect(without('engine.ring_gap_boost_limit').missing).toEqual(['engine.ring_gap']);
		expect(Number(without('boost.lowest_limit').value)).toBeGreaterThan(0);
	});
});
