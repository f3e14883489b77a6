import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { evaluate } from '../../src/graph/solve.ts';
import { type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
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

	test.each(['boosted', 'unboosted'] as const)(
		'of a limit is the same where no other is asked for, on the %s build',
		name => {
			const options = { date: '2026-05-01', units: 'us', tool: 'test', draws: 400 } as const;
			const { audit } = assess(model, { sheet: buildSheet(name), warnings: [] }, { ...options, extent: 'page' });
			const whole = name === 'boosted' ? boosted.audit : audited(buildSheet(name)).audit;
			expect(audit.limits).toEqual(whole.limits);
			for (const [at, { rule, verdict, harm, sure }] of whole.findings.entries()) {
				const isShown = verdict === 'fails' || (verdict === 'holds' && !['wear', 'annoys'].includes(harm));
				expect(audit.findings[at], rule).toMatchObject({ rule, verdict, sure: isShown ? sure : null });
			}
		},
	);

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
