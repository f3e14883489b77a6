import { describe, expect, test } from 'vitest';
import { writeSheetProblem } from '../../src/sheet/problem.ts';
import { buildSheet } from '../support/model.ts';
import { answered, changed, opened, problemsOf } from './problems.ts';

const spoilt = (from: string, to: string) => changed(() => {}).replace(from, to);

describe('a sheet', () => {
	test.each(['boosted', 'unboosted'] as const)('as the full %s build writes it is taken', build => {
		expect(problemsOf(JSON.stringify(buildSheet(build)))).toEqual([]);
	});

	test('needs no more than format, version and answers', () => {
		const { sheet } = opened('{"format": "swap-audit/sheet", "version": 1, "answers": {}}');
		expect(sheet).toMatchObject({ name: 'Unnamed build', units: 'us', answers: {}, audits: [] });
	});

	test('keeps keys at the top that are not ours', () => {
		expect(opened(changed(top => (top.mine = { a: 1 }))).sheet.mine).toEqual({ a: 1 });
	});

	test('keeps a note as it is, control characters and all: it is escaped where it is printed', () => {
		const note = 'a\u001b[2J\u202eb\n\u0000';
		const { sheet } = opened(answered('engine.bore', { value: 4, unit: 'in', note }));
		expect(sheet.answers.engine?.bore?.note).toBe(note);
	});
});

describe('what is refused at the top names its place', () => {
	test.each([
		['another format', changed(sheet => (sheet.format = 'x')), 'format', /swap-audit\/sheet/],
		['no format', changed(sheet => delete sheet.format), 'format', /swap-audit\/sheet/],
		['a newer version', changed(sheet => (sheet.version = 99)), 'version', /Update swap-audit/],
		['a version too large to read', spoilt('"version":1', '"version":1e999'), 'version', /Update swap-audit/],
		['a version that is none', changed(sheet => (sheet.version = 'one')), 'version', /a whole number/],
		['version 0', changed(sheet => (sheet.version = 0)), 'version', /a whole number/],
		['unknown units', changed(sheet => (sheet.units = 'imperial')), 'units', /"us" or "metric"/],
		['a name that is no text', changed(sheet => (sheet.name = 7)), 'name', /a text/],
		['a name of a page', changed(sheet => (sheet.name = 'x'.repeat(201))), 'name', /at most 200/],
		['answers that are a list', changed(sheet => (sheet.answers = [] as never)), 'answers', /an object/],
		['no answers', changed(sheet => delete (sheet as Record<string, unknown>).answers), 'answers', /an object/],
		['an unknown section, even empty', changed(s => (s.answers.paint = {})), 'answers.paint', /one of the sections/],
		['a section that is a list', changed(s => (s.answers.engine = [] as never)), 'engine', /an object/],
		['an unknown answer', answered('engine.colour', { value: 1 }), 'engine.colour', /an answer of this section/],
		['a list for a sheet', '[]', 'sheet', /a JSON object/],
		['a number for a sheet', '7', 'sheet', /a JSON object/],
		['null for a sheet', 'null', 'sheet', /a JSON object/],
	] as const)('%s', (_, text, path, accepted) => {
		const [problem] = problemsOf(text);
		expect(problem?.path).toBe(path);
		expect(problem?.accepted).toMatch(accepted);
		expect(problem?.found).not.toBe('');
	});

	test('a slip of the fingers is answered with the names that are near it', () => {
		expect(problemsOf(answered('engine.strok', { value: 3, unit: 'in' }))[0]?.accepted).toContain('engine.stroke');
	});
});

describe('a prototype is refused wherever it stands', () => {
	const proto = '"__proto__":{"value":1},';
	test.each([
		['at the top', spoilt('"answers":', `${proto}"answers":`), '__proto__'],
		['among the sections', spoilt('"build":', `${proto}"build":`), 'answers.__proto__'],
		['among the answers', spoilt('"bore":', `${proto}"bore":`), 'engine.__proto__'],
		['in an answer', spoilt('"bore":{', `"bore":{${proto}`), 'engine.bore.__proto__'],
		['as a section', spoilt('"build":', '"constructor":{},"build":'), 'answers.constructor'],
		['as an answer', spoilt('"bore":', '"toString":{"value":1},"bore":'), 'engine.toString'],
		['as a choice', answered('boost.kind', { value: '__proto__' }), 'boost.kind'],
		['as a choice inherited', answered('boost.kind', { value: 'constructor' }), 'boost.kind'],
		['as one of several', answered('engine.history', { value: ['constructor'] }), 'engine.history'],
		[
			'in a row',
			answered('harness.circuits', { value: 'here' }).replace('"here"', `[{${proto}"circuit":"x","state":"done"}]`),
			'harness.circuits',
		],
	] as const)('%s', (_, text, path) => {
		expect(problemsOf(text).map(problem => problem.path)).toEqual([path]);
	});
});

test('everything that is wrong is reported in one go', () => {
	const text = changed(sheet => {
		sheet.units = 'imperial';
		sheet.answers.paint = {};
		sheet.answers.engine!.bore = { value: 'four', unit: 'in' };
		sheet.answers.engine!.stroke = { value: 3, unit: 'psi', known: 'surely' };
		sheet.answers.boost!.kind = { value: 'nitrous' };
	});
	expect(
		problemsOf(text)
			.map(({ path }) => path)
			.sort(),
	).toEqual(['answers.paint', 'boost.kind', 'engine.bore', 'engine.stroke.known', 'engine.stroke.unit', 'units']);
});

test('a message is one line, short, and cannot steer the terminal, whatever the file holds', () => {
	const key = `\u001b]8;;x\u0007${'x'.repeat(5000)}\u202e`;
	for (const problem of problemsOf(
		changed(({ answers }) => (answers.engine![key] = { value: '\u009b2J'.repeat(99) })),
	)) {
		const line = writeSheetProblem(problem);
		expect(line).not.toMatch(/\p{Cc}|\p{Cf}/u);
		expect(line.length).toBeLessThan(500);
	}
});

describe('what is odd is taken with a warning', () => {
	test('a value outside its plausible range', () => {
		const { warnings } = opened(answered('ignition.gap', { value: 0.1, unit: 'in' }));
		expect(warnings).toEqual([{ path: 'ignition.gap', found: '0.1 in', accepted: 'usually 0.015 to 0.07 in' }]);
	});

	test('a dash size where a bore is asked', () => {
		const { warnings } = opened(answered('fuel.line_bore', { value: 8, unit: 'AN' }));
		expect(warnings[0]).toMatchObject({ path: 'fuel.line_bore', accepted: expect.stringContaining('outside') });
	});
});

describe('the lists of a sheet are as long as it has cylinders', () => {
	const six = (compression: unknown) =>
		changed(({ answers }) => {
			answers.engine = { cylinders: { value: 6 }, compression: { value: compression, unit: 'psi' } };
			delete answers.ignition!.towers;
		});

	test('six, when it says six', () => {
		expect(problemsOf(six([150, 150, 150, 150, 150, null]))).toEqual([]);
		expect(problemsOf(six(new Array(8).fill(150)))[0]?.accepted).toMatch(/^6 readings/);
	});

	test('eight, when it says nothing or nonsense', () => {
		expect(problemsOf(answered('engine.cylinders', { known: 'not-known' }))).toEqual([]);
		for (const cylinders of [{ value: -1 }, { value: 1e9 }, null, 'x'])
			expect(problemsOf(answered('engine.cylinders', cylinders)).map(({ path }) => path)).toEqual(['engine.cylinders']);
	});
});

describe('what stands beside the answers', () => {
	const withShop = (json: string) => JSON.stringify(buildSheet('boosted')).replace('{', `{"shop": ${json},`);

	test.each([
		['{"weight": [1, 1e999]}', 'shop.weight[1]', 'a number too large to read'],
		['{"ticket": 12345678901234567890}', 'shop.ticket', 'a number with more digits than can be kept'],
	])('%s would come back as another number: refused', (json, path, found) => {
		expect(problemsOf(withShop(json))).toEqual([
			{ path, found, accepted: 'a smaller number, or the number as a text' },
		]);
	});

	test.each(['9007199254740991', '0.1', '-1e-300', '"12345678901234567890"', '{"a": [1, null]}'])(
		'%s is kept',
		json => {
			expect(opened(withShop(json)).sheet.shop).toEqual(JSON.parse(json));
		},
	);
});

test('a file of a thousand faults is given up after 500, which says so', () => {
	const problems = problemsOf(
		changed(sheet => {
			for (let index = 0; index < 1000; index++) sheet.answers[`section_${index}`] = {};
		}),
	);
	expect(problems).toHaveLength(501);
	expect(problems.at(-1)!.found).toBe('500 faults, and more behind them');
});
