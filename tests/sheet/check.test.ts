import { describe, expect, test } from 'vitest';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { BadSheet } from '../../src/sheet/problem.ts';
import { buildSheet, testModel } from '../support/model.ts';

const { questions } = testModel().rulebook;

/** The full boosted build with one thing changed, as JSON text. */
function changed(
	change: (sheet: { answers: Record<string, Record<string, unknown>> } & Record<string, unknown>) => void,
): string {
	const sheet = structuredClone(buildSheet('boosted')) as never as Parameters<typeof change>[0];
	change(sheet);
	return JSON.stringify(sheet);
}

function problemsOf(text: string): readonly { path: string; found: string; accepted: string }[] {
	try {
		checkSheet(parseSheet(text), questions);
		return [];
	} catch (error) {
		if (error instanceof BadSheet) return error.problems;
		throw error;
	}
}

const answer = (section: string, name: string, value: unknown) =>
	changed(({ answers }) => (answers[section]![name] = value));

test('both full builds are taken', () => {
	for (const build of ['boosted', 'unboosted'] as const)
		expect(problemsOf(JSON.stringify(buildSheet(build)))).toEqual([]);
});

describe('each error names its place, what was found and what is accepted', () => {
	test.each([
		[
			'an unknown section, even empty',
			changed(({ answers }) => (answers.paint = {})),
			'answers.paint',
			/one of the sections/,
		],
		['an unknown answer', answer('engine', 'colour', { value: 1 }), 'engine.colour', /an answer of this section/],
		['a wrong unit', answer('engine', 'bore', { value: 4, unit: 'psi' }), 'engine.bore.unit', /length/],
		['no unit', answer('engine', 'bore', { value: 4 }), 'engine.bore.unit', /in, /],
		['a unit on a choice', answer('boost', 'kind', { value: 'none', unit: 'psi' }), 'boost.kind.unit', /no unit/],
		['outside the hard range', answer('engine', 'bore', { value: -4, unit: 'in' }), 'engine.bore', / to .* in$/],
		[
			'text for a number',
			answer('engine', 'bore', { value: '4 in', unit: 'in' }),
			'engine.bore',
			/a JSON number, not text/,
		],
		['a fraction for a whole number', answer('engine', 'year', { value: 1999.5 }), 'engine.year', /whole number/],
		[
			'an unknown choice',
			answer('boost', 'kind', { value: 'nitrous' }),
			'boost.kind',
			/none, turbocharger, supercharger/,
		],
		['a prototype for a choice', answer('boost', 'kind', { value: 'constructor' }), 'boost.kind', /one of/],
		[
			'an unknown way of knowing',
			answer('engine', 'bore', { value: 4, unit: 'in', known: 'surely' }),
			'engine.bore.known',
			/measured, paperwork, estimate, not-known/,
		],
		[
			'a value and not known',
			answer('engine', 'bore', { value: 4, unit: 'in', known: 'not-known' }),
			'engine.bore.value',
			/no value/,
		],
		['neither', answer('engine', 'bore', {}), 'engine.bore.value', /a value, or/],
		['a key that is none', answer('engine', 'bore', { valeu: 4 }), 'engine.bore.valeu', /only value/],
		[
			'a negative spread',
			answer('engine', 'bore', { value: 4, unit: 'in', spread: -1 }),
			'engine.bore.spread',
			/0 or more/,
		],
		[
			'a firing order that repeats',
			answer('engine', 'firing_order', { value: [1, 1, 4, 3, 6, 5, 7, 2] }),
			'engine.firing_order',
			/1 to 8 once/,
		],
		[
			'a list that is too short',
			answer('engine', 'compression', { value: [150, 150], unit: 'psi' }),
			'engine.compression',
			/8 readings/,
		],
		[
			'a list of nothing',
			answer('engine', 'compression', { value: new Array(8).fill(null), unit: 'psi' }),
			'engine.compression',
			/not all null/,
		],
		[
			'towers with a cylinder twice',
			answer('ignition', 'towers', {
				value: [
					[1, 6],
					[1, 3],
				],
			}),
			'ignition.towers',
			/no cylinder twice/,
		],
		[
			'a curve that falls back',
			answer('sensors', 'meter_curve', {
				value: [
					[1, 10],
					[1, 20],
				],
				unit: ['V', 'kg/h'],
			}),
			'sensors.meter_curve',
			/x rising/,
		],
		['a code that is none', answer('harness', 'codes', { value: ['P9999'] }), 'harness.codes', /P0340/],
		[
			'none beside others',
			answer('boost', 'check_valves', { value: ['none', 'crankcase'] }),
			'boost.check_valves',
			/none by itself/,
		],
		[
			'a circuit without a state',
			answer('harness', 'circuits', { value: [{ circuit: 'x' }] }),
			'harness.circuits',
			/done, to-do or not-used/,
		],
		['unknown units', changed(sheet => (sheet.units = 'imperial')), 'units', /"us" or "metric"/],
		['another format', changed(sheet => (sheet.format = 'x')), 'format', /swap-audit\/sheet/],
		['a newer version', changed(sheet => (sheet.version = 99)), 'version', /update swap-audit/],
		[
			'a prototype among the sections',
			changed(() => {}).replace('"build":', '"__proto__":{"x":{"value":1}},"build":'),
			'answers.__proto__',
			/one of the sections/,
		],
		[
			'a prototype among the answers',
			changed(() => {}).replace('"bore":', '"__proto__":{"value":1},"bore":'),
			'engine.__proto__',
			/an answer of this section/,
		],
		['no JSON', '{"format": "swap-audit/sheet",', 'sheet', /a JSON object/],
		['nothing', '', 'sheet', /a JSON object/],
		['a list', '[]', 'sheet', /a JSON object/],
		['ten thousand brackets', '['.repeat(10_000), 'sheet', /as swap-audit writes it/],
	] as const)('%s', (_, text, path, accepted) => {
		const [problem] = problemsOf(text);
		expect(problem?.path).toBe(path);
		expect(problem?.accepted).toMatch(accepted);
		expect(problem?.found.length).toBeGreaterThan(0);
	});

	test('all of them in one go', () => {
		const text = changed(({ answers }) => {
			answers.paint = {};
			answers.engine!.bore = { value: 'four', unit: 'in' };
			answers.boost!.kind = { value: 'nitrous' };
		});
		expect(
			problemsOf(text)
				.map(({ path }) => path)
				.sort(),
		).toEqual(['answers.paint', 'boost.kind', 'engine.bore']);
	});
});

describe('gauge and absolute pressure are never mixed', () => {
	test('psia on a gauge question is refused with the gauge value suggested', () => {
		expect(problemsOf(answer('fuel', 'pressure', { value: 58.2, unit: 'psia' }))[0]?.accepted).toContain('43.5 psi');
	});

	test('the one asked as absolute takes kPa as absolute, kPa abs and psia', () => {
		for (const unit of ['kPa', 'kPa abs'])
			expect(problemsOf(answer('sensors', 'map_full_scale', { value: 250, unit }))).toEqual([]);
		expect(problemsOf(answer('sensors', 'map_full_scale', { value: 36, unit: 'psia' }))).toEqual([]);
		expect(problemsOf(answer('sensors', 'map_full_scale', { value: 36, unit: 'psi' }))).not.toEqual([]);
	});
});

describe('units as the trade writes them', () => {
	test.each([
		['engine', 'bore', 4, 'inches'],
		['engine', 'bore', 101.6, 'mm'],
		['injectors', 'rated_flow', 440, 'cc/min'],
		['injectors', 'rated_flow', 42, 'lb/hr'],
		['fuel', 'pump_flow', 255, 'lph'],
		['fuel', 'pump_wire_gauge', 12, 'AWG'],
		['fuel', 'pump_wire_gauge', 4, 'mm2'],
		['fuel', 'octane', 91, 'AKI'],
		['fuel', 'octane', 95, 'RON'],
		['engine', 'compression_ratio', 9, ':1'],
		['build', 'humidity', 50, '%'],
	] as const)('%s.%s takes %d %s', (section, name, value, unit) => {
		expect(problemsOf(answer(section, name, { value, unit, known: 'measured' }))).toEqual([]);
	});

	test('bare ratios need no unit', () => {
		expect(problemsOf(answer('boost', 'lambda', { value: 0.8 }))).toEqual([]);
		expect(problemsOf(answer('engine', 'compression_ratio', { value: 9 }))).toEqual([]);
	});
});

test('an odd value is taken with a warning', () => {
	const { warnings } = checkSheet(parseSheet(answer('ignition', 'gap', { value: 0.1, unit: 'in' })), questions);
	expect(warnings.map(({ path }) => path)).toEqual(['ignition.gap']);
});

test('keys at the top that are not ours are kept', () => {
	const { sheet } = checkSheet(parseSheet(changed(top => (top.mine = { a: 1 }))), questions);
	expect(sheet.mine).toEqual({ a: 1 });
});
