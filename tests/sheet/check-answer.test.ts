import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkAnswer, type Found } from '../../src/sheet/check-answer.ts';
import { writeSheetProblem } from '../../src/sheet/problem.ts';
import { seed } from '../counts.ts';
import { testModel } from '../support/model.ts';
import { answered, opened, problemsOf } from './problems.ts';

const bore = { value: 4, unit: 'in' };

describe('an answer is refused at the part that is wrong', () => {
	test.each([
		['a bare number', 'engine.bore', 4, 'engine.bore', /an object with a value/],
		['null', 'engine.bore', null, 'engine.bore', /an object with a value/],
		['a list', 'engine.bore', [4], 'engine.bore', /an object with a value/],
		['neither a value nor not known', 'engine.bore', {}, 'engine.bore.value', /a value, or known: "not-known"/],
		['both', 'engine.bore', { ...bore, known: 'not-known' }, 'engine.bore.value', /no value beside/],
		[
			'both, the value null',
			'engine.bore',
			{ value: null, known: 'not-known' },
			'engine.bore.value',
			/no value beside/,
		],
		['a key that is none', 'engine.bore', { ...bore, valeu: 4 }, 'engine.bore.valeu', /only value, unit, known/],
		[
			'an unknown way of knowing',
			'engine.bore',
			{ ...bore, known: 'surely' },
			'engine.bore.known',
			/measured, paperwork/,
		],
		['a note that is no text', 'engine.bore', { ...bore, note: 7 }, 'engine.bore.note', /a text/],
		['a spread under 0', 'engine.bore', { ...bore, spread: -1 }, 'engine.bore.spread', /0 or more/],
		['a spread as text', 'engine.bore', { ...bore, spread: '1' }, 'engine.bore.spread', /a number/],
		[
			'a spread past all numbers',
			'engine.compression_ratio',
			{ value: 9, spread: Number.MAX_VALUE * 2 },
			'engine.compression_ratio.spread',
			/a number/,
		],
		[
			'a spread that no unit can hold',
			'fuel.pressure',
			{ value: 43, unit: 'psi', spread: 1e306 },
			'fuel.pressure.spread',
			/smaller/,
		],
		[
			'a unit on what has none, not known',
			'boost.kind',
			{ known: 'not-known', unit: 'psi' },
			'boost.kind.unit',
			/no unit/,
		],
	] as const)('%s', (_, id, given, path, accepted) => {
		// JSON has no infinity: it is written as a number that reads as one.
		const [problem, ...more] = problemsOf(answered(id, given).replace('"spread":null', '"spread":1e999'));
		expect(problem?.path).toBe(path);
		expect(problem?.accepted).toMatch(accepted);
		expect(more).toEqual([]);
	});

	test.each([
		['boost.kind', { value: 'none', spread: 1 }, 'boost.kind.spread', /exact/],
		['engine.cylinders', { value: 8, spread: 1 }, 'engine.cylinders.spread', /exact/],
		['harness.codes', { value: ['P0340', 'P0340'] }, 'harness.codes', /each once/],
	])('%s %j stands, and is remarked on', (id, answer, path, accepted) => {
		expect(opened(answered(id, answer)).warnings).toContainEqual(
			expect.objectContaining({ path, accepted: expect.stringMatching(accepted) }),
		);
	});

	test('a unit may wait beside a number that is not known', () => {
		expect(problemsOf(answered('engine.bore', { known: 'not-known', unit: 'in', note: 'lost the gauge' }))).toEqual([]);
	});
});

describe('a unit that does not fit is refused with those that do', () => {
	test.each([
		['engine.bore', 4, 'psi', /for a gauge pressure.*in, thou/],
		['engine.bore', 4, undefined, /in, thou/],
		['engine.bore', 4, 'furlongs', /^a length \(in, thou/],
		['engine.bore', 4, ['in'], /one unit/],
		['engine.bore', 4, 7, /a unit as text/],
		['engine.bore', 4, '', /in, thou/],
		['boost.kind', 'none', 'psi', /no unit here/],
		['engine.year', 1999, 'years', /no unit here/],
		['fuel.elbows', 4, '1', /no unit here/],
		['fuel.octane', 91, undefined, /AKI, RON/],
		['fuel.pump_wire_gauge', 12, undefined, /AWG/],
		['build.humidity', 50, undefined, /%/],
		['sensors.speed_pulses_sent', 8000, undefined, /pulses\/mi/],
		[
			'sensors.meter_curve',
			[
				[1, 5],
				[2, 9],
			],
			'V',
			/two units/,
		],
		[
			'sensors.meter_curve',
			[
				[1, 5],
				[2, 9],
			],
			['V', 'psi'],
			/mass flow/i,
		],
		['charging.loads', [['fans', 28]], ['A'], /one unit/],
	] as const)('%s %j in %j', (id, value, unit, accepted) => {
		const [problem, ...more] = problemsOf(answered(id, { value, ...(unit === undefined ? {} : { unit }) }));
		expect(problem?.path).toBe(`${id}.unit`);
		expect(problem?.accepted).toMatch(accepted);
		expect(more).toEqual([]);
	});
});

describe('units as the trade writes them are taken', () => {
	test.each([
		['engine.bore', 4, 'inches'],
		['engine.bore', 101.6, 'mm'],
		['engine.ring_gap', 18, 'thou'],
		['injectors.rated_flow', 440, 'cc/min'],
		['injectors.rated_flow', 42, 'lb/hr'],
		['fuel.pump_flow', 255, 'lph'],
		['fuel.pump_flow', 400, 'lb/h'],
		['fuel.pump_wire_gauge', 12, 'AWG'],
		['fuel.pump_wire_gauge', 4, 'mm2'],
		['fuel.octane', 91, 'AKI'],
		['fuel.octane', 91, '(R+M)/2'],
		['fuel.octane', 95, 'RON'],
		['engine.compression_ratio', 9, ':1'],
		['engine.compression_ratio', 9, undefined],
		['driveline.axle_ratio', 3.55, undefined],
		['driveline.top_gear', 0.68, ':1'],
		['boost.lambda', 0.8, undefined],
		['boost.lambda', 0.8, '1'],
		['driveline.clutch_friction', 0.3, '1'],
		['build.humidity', 50, '%'],
		['sensors.speed_pulses_sent', 8000, 'pulses/mi'],
		['build.hot_day', 95, '°F'],
		['harness.key_off_draw', 85, 'mA'],
	] as const)('%s %d %s', (id, value, unit) => {
		expect(problemsOf(answered(id, { value, ...(unit ? { unit } : {}), known: 'measured' }))).toEqual([]);
	});
});

describe('gauge and absolute pressure are never mixed', () => {
	test.each([
		['fuel.pressure', 58.2, 'psia', '43.5 psi'],
		['boost.target', 200, 'kPa abs', '98.7 kPa'],
		['engine.compression', [164.7, null, 160, 160, 160, 160, 160, 160], 'psia', '150 psi'],
	] as const)('%s in %s %s is refused, and the gauge reading named', (id, value, unit, gauge) => {
		const [problem] = problemsOf(answered(id, { value, unit }));
		expect(problem?.path).toBe(`${id}.unit`);
		expect(problem?.accepted).toContain(gauge);
	});

	test('the one asked as absolute takes plain kPa as absolute, kPa abs and psia, and no plain psi', () => {
		for (const [value, unit] of [
			[250, 'kPa'],
			[250, 'kPa abs'],
			[36, 'psia'],
		] as const)
			expect(problemsOf(answered('sensors.map_full_scale', { value, unit }))).toEqual([]);
		expect(problemsOf(answered('sensors.map_full_scale', { value: 36, unit: 'psi' }))[0]?.accepted).toContain('psia');
	});
});

test('whatever JSON stands in an answer, it is taken or refused in words, never more', () => {
	const { questions } = testModel().rulebook;
	const anything = fc.oneof(
		fc.jsonValue({ maxDepth: 3 }),
		fc.double(),
		fc.constantFrom('in', 'psi', 'not-known', [1, 2]),
	);
	fc.assert(
		fc.property(
			fc.constantFrom(...questions),
			fc.record(
				{ value: anything, unit: anything, known: anything, spread: anything, note: anything },
				{ requiredKeys: [] },
			),
			(question, answer) => {
				const found: Found = { problems: [], warnings: [] };
				checkAnswer(question, answer, 8, found);
				for (const problem of [...found.problems, ...found.warnings]) {
					expect(problem.path.startsWith(question.id)).toBe(true);
					expect(problem.accepted).not.toBe('');
					expect(writeSheetProblem(problem)).not.toMatch(/\p{Cc}|undefined|NaN/u);
				}
			},
		),
		{ seed, numRuns: 3000 },
	);
});
