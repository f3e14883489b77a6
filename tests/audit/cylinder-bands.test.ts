import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { quantities } from '../../src/quantities/all.ts';
import { buildSheet, testModel } from '../support/model.ts';

const ofCylinder = [
	'engine.peak_pressure',
	'engine.peak_pressure_angle',
	'engine.knock_integral',
	'engine.knock_limited_advance',
	'engine.knock_boost_limit',
] as const;

describe('what comes from the cylinder model says that it is an estimate', () => {
	const { audit } = assess(
		testModel(),
		{ sheet: buildSheet('boosted'), warnings: [] },
		{ date: '2026-05-01', units: 'us', tool: 'test', draws: 200 },
	);

	test.each(ofCylinder)('%s: by its nature, with a band about its figure', id => {
		expect(quantities.find(quantity => quantity.id === id)!.nature).toBe('estimate');
		const { value, low, high, bound } = audit.quantities[id]!;
		expect(value).toBeTypeOf('number');
		expect(low).toBeLessThanOrEqual(value as number);
		expect(high).toBeGreaterThanOrEqual(value as number);
		if (bound === null) expect(low).toBeLessThan(high!);
	});

	test.each([
		['engine.peak_pressure', /x 0\.85 to 1\.16, as flame, walls and residual are usual ones/],
		['engine.peak_pressure_angle', /4 deg either way, as the flame is a usual one/],
		['engine.knock_integral', /x 0\.6 to x 1\.6, the spread of the correlation/],
	] as const)('%s names its own band and where that is from', (id, words) => {
		expect(quantities.find(quantity => quantity.id === id)!.formula).toMatch(words);
	});
});
