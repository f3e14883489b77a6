import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { evaluate } from '../../src/graph/solve.ts';
import { type Answer, answerTo, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { buildSheet, testModel } from '../support/model.ts';

const model = testModel();
const audited = (sheet: Sheet, draws = 400) =>
	assess(model, { sheet, warnings: [] }, { date: '2026-05-01', units: 'us', tool: 'test', draws });
const boosted = audited(buildSheet('boosted'));

describe('the band of a number', () => {
	test('lies about it, low under high', () => {
		for (const [id, { value, low, high }] of Object.entries(boosted.audit.quantities)) {
			if (typeof value !== 'number') continue;
			expect(low, id).not.toBeNull();
			expect(low! <= high!, id).toBe(true);
			if (!id.startsWith('engine.cycle'))
				expect(
					low! <= value * (1 + 1e-9) + 1e-12 && value <= high! * (1 + 1e-9) + 1e-12,
					`${id}: ${low} ${value} ${high}`,
				).toBe(true);
		}
	});

	test('is the same for the same sheet, and wider for a worse known answer', () => {
		expect(audited(buildSheet('boosted')).audit.quantities).toEqual(boosted.audit.quantities);
		const guessed = withAnswer(buildSheet('boosted'), 'injectors.rated_flow', {
			value: 60,
			unit: 'lb/h',
			known: 'estimate',
		});
		const width = ({ low, high }: { low: number | null; high: number | null }) => high! - low!;
		const before = width(boosted.audit.quantities['injectors.duty']!);
		expect(width(audited(guessed).audit.quantities['injectors.duty']!)).toBeGreaterThan(1.5 * before);
	});

	test('is null without draws, and so is how sure a verdict is', () => {
		const { audit } = audited(buildSheet('boosted'), 0);
		expect(Object.values(audit.quantities).every(({ low, high }) => low === null && high === null)).toBe(true);
		expect(audit.findings.every(({ sure }) => sure === null)).toBe(true);
	});
});

test('how sure: a share for what fails or holds, null for the rest; near a threshold less than far from it', () => {
	for (const { verdict, sure } of boosted.audit.findings) {
		if (verdict === 'fails' || verdict === 'holds') expect(sure !== null && sure >= 0 && sure <= 1).toBe(true);
		else expect(sure).toBeNull();
	}
	const sureOf = (torque: number) => {
		const sheet = withAnswer(buildSheet('boosted'), 'driveline.clutch_torque', {
			value: torque,
			unit: 'lb-ft',
			known: 'estimate',
		});
		return audited(sheet).audit.findings.find(({ rule }) => rule === 'driveline.clutch-slips')!.sure!;
	};
	expect(sureOf(900)).toBeGreaterThan(sureOf(400));
});

test('the 90 % band of the air flow covers the truth in 84 to 96 of a hundred sheets with known truth', () => {
	// Truth is one build; each person measures it a little off, by the spread that measuring has, and is audited. The
	// draws of chance are the test's own, not the program's.
	const ids = [
		'engine.bore',
		'engine.stroke',
		'engine.volumetric_efficiency',
		'boost.target',
		'build.hot_day',
	] as const;
	const true_ = audited(buildSheet('boosted'), 0);
	const truth = true_.audit.quantities['engine.air_flow']!.value as number;
	let state = seed;
	const random = () => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		return (state + 0.5) / 4294967296;
	};
	const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
	const others = model.rulebook.questions.map(({ id }) => id).filter(id => !(ids as readonly string[]).includes(id));
	// What is not measured anew is exact in this trial.
	const exact = others.reduce((sheet, id) => {
		const answer = answerTo(sheet, id);
		return answer && typeof answer.value === 'number' && answer.unit !== undefined
			? withAnswer(sheet, id, { ...answer, spread: 0 })
			: sheet;
	}, buildSheet('boosted'));
	const spread = {
		'engine.bore': 0.005 * 4,
		'engine.stroke': 0.005 * 3.25,
		'engine.volumetric_efficiency': 0.02 * 86,
		'boost.target': 0.02 * 8,
		'build.hot_day': 1.8,
	};
	let covered = 0;
	const { trials } = counts;
	for (let trial = 0; trial < trials; trial++) {
		const sheet = ids.reduce((now, id) => {
			const answer = answerTo(exact, id) as Answer & { value: number };
			return withAnswer(now, id, {
				...answer,
				value: answer.value + (spread[id] / 1.6449) * normal(),
				known: 'measured',
			});
		}, exact);
		const { low, high } = assess(
			model,
			{ sheet, warnings: [] },
			{ date: '2026-05-01', units: 'us', tool: 'test', draws: 100, next: false },
		).audit.quantities['engine.air_flow']!;
		if (low! <= truth && truth <= high!) covered++;
	}
	console.info(`${covered} of ${trials} covered`);
	expect(covered / trials).toBeGreaterThanOrEqual(0.84);
	expect(covered / trials).toBeLessThanOrEqual(0.96);
}, 3_600_000);

describe('the ladder', () => {
	test('has four rungs or more on a full build, lowest first, boosted in Pa and unboosted in rpm', () => {
		for (const [build, unit] of [
			['boosted', 'Pa'],
			['unboosted', 'rpm'],
		] as const) {
			const placed = audited(buildSheet(build), 0).audit.limits.filter(({ value }) => value !== null);
			expect(placed.length).toBeGreaterThanOrEqual(4);
			expect(placed.every(rung => rung.unit === unit)).toBe(true);
			expect(placed.map(({ value }) => value!)).toEqual(placed.map(({ value }) => value!).sort((a, b) => a - b));
		}
	});

	test('agrees with stepping boost up by hand', () => {
		const watched = {
			'injectors.boost_limit': ['injectors.duty', 0.85, 1],
			'fuel.pump_boost_limit': ['fuel.pump_margin', 0, -1],
			'ignition.boost_limit': ['ignition.spark_margin', 0, -1],
			'driveline.clutch_boost_limit': ['driveline.clutch_margin', 0, -1],
		} as const;
		for (const [limit, [id, end, way]] of Object.entries(watched)) {
			const found = boosted.audit.limits.find(rung => rung.limit === limit)!.value!;
			const at = (boost: number) => (evaluate(boosted.state, [id], { 'boost.target': boost })[0] as number) * way;
			expect(at(found - 70), limit).toBeLessThan(end * way);
			expect(at(found + 70), limit).toBeGreaterThan(end * way);
		}
	});

	test('says which answers would place what it could not place', () => {
		const without = withAnswer(buildSheet('boosted'), 'ignition.gap', undefined);
		const rung = audited(without, 0).audit.limits.find(({ limit }) => limit === 'ignition.boost_limit')!;
		expect(rung).toMatchObject({ value: null, missing: ['ignition.gap'] });
	});
});
