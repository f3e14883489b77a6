import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bind } from '../../src/expressions/bind.ts';
import type { Expression, Outcome } from '../../src/expressions/tree.ts';
import { quantities } from '../../src/log/quantities.ts';
import { compileExpression } from '../../src/rulebook/compile/expression.ts';
import { namesOf } from '../../src/rulebook/compile/names.ts';
import { type Problem, Source } from '../../src/rulebook/compile/source.ts';
import { counts, seed } from '../counts.ts';
import { ruleTexts, testModel } from '../support/model.ts';

const names = namesOf(testModel().rulebook.questions, quantities);

/** What an expression text comes to: its tree, or what is said against it. */
function compiled(text: string): { tree: Expression | null; problems: readonly Problem[] } {
	const problems: Problem[] = [];
	// The text stands behind its own words, so that any text is found verbatim at its place.
	const source = new Source({ path: 'x.yaml', text: '{}' }, problems);
	const verbatim = Object.assign(Object.create(source) as Source, { hasVerbatim: () => true });
	return { tree: compileExpression(verbatim, { text, offset: 0 }, names)?.tree ?? null, problems };
}

/** ms for one compilation, printed and never judged; the best of five where one was slow, for the machine does other things too. */
function slowest(text: string): number {
	const once = () => {
		const start = performance.now();
		compiled(text);
		return performance.now() - start;
	};
	const first = once();
	return first < 2 ? first : Math.min(first, ...Array.from({ length: 5 }, once));
}

/** A value of any sort under any name: nothing in an expression may trip over it. */
const anything: readonly Outcome[] = [
	undefined,
	null,
	0,
	1,
	-1e300,
	1e300,
	true,
	false,
	'none',
	'__proto__',
	[],
	['none'],
];

const piece = fc.oneof(
	fc.constantFrom(
		...['engine.bore', 'boost.kind', 'engine.history', 'engine.compression_ratio', 'item', 'engine', 'a.b.c'],
		...[
			'"none"',
			'"x"',
			"'y'",
			'r"z"',
			'b"w"',
			'"""',
			'0.5',
			'3',
			'1e999',
			'0x1',
			'7u',
			'9223372036854775808',
			'null',
			'true',
		],
		...[
			'==',
			'!=',
			'<',
			'<=',
			'>',
			'>=',
			'&&',
			'||',
			'!',
			'(',
			')',
			'[',
			']',
			'{',
			'}',
			'?',
			':',
			'in',
			',',
			'.',
			'+',
			'-',
			'*',
		],
		...[
			'/ 2.0',
			'/ 0.0',
			'%',
			'size(',
			'has(',
			'dyn(',
			'type(',
			'matches(',
			'.matches("(a+)+$")',
			'.all(x, x)',
			'.map(x, x)',
		],
		...[
			'.exists(x, ',
			'.filter(x, ',
			'cel.bind(x, ',
			'optional.of(',
			'timestamp(',
			'duration("1s")',
			'string(',
			'int(',
		],
		...['__proto__', 'constructor', 'prototype', 'hasOwnProperty', 'toString', '.constructor', '["constructor"]'],
		...['\\', '\u0000', '//', '/*', '#', '`', '$', ';', '=>', '\n', '\u202e', '\ud800', 'é'],
	),
	fc.string({ maxLength: 4 }),
	fc.string({ unit: 'binary', maxLength: 3 }),
);
const ofPieces = fc
	.tuple(fc.array(piece, { maxLength: 16 }), fc.constantFrom('', ' '))
	.map(([pieces, gap]) => pieces.join(gap));

/** Expressions of the rules, with letters lost, put in and changed places. */
const real = ruleTexts().flatMap(({ text }) =>
	[...text.matchAll(/^ +(?:holds|applies|ask_when): (.*)$/gm)].map(([, one]) => one!),
);
const spoilt = fc
	.tuple(fc.constantFrom(...real), fc.array(fc.tuple(fc.nat(400), fc.nat(8), piece), { minLength: 1, maxLength: 3 }))
	.map(([text, cuts]) =>
		cuts.reduce((now, [at, length, other]) => {
			const place = at % (now.length + 1);
			return now.slice(0, place) + other + now.slice(place + length);
		}, text),
	);

test('a text of anything is refused, or is an expression that is checked and decides without throwing', () => {
	let taken = 0;
	let worst = 0;
	fc.assert(
		fc.property(fc.oneof(ofPieces, spoilt), fc.constantFrom(...anything), (text, value) => {
			const { tree, problems } = compiled(text);
			worst = Math.max(worst, slowest(text));
			expect(tree === null).toBe(problems.length > 0);
			if (tree === null) return;
			taken++;
			const outcome = bind(tree, name => () => fitting(name, value))();
			if (typeof outcome === 'number') expect(Number.isFinite(outcome)).toBe(true);
		}),
		{ seed, numRuns: counts.expressionTexts },
	);
	console.info(`${taken} of ${counts.expressionTexts} texts are expressions; the slowest took ${worst.toFixed(2)} ms`);
	expect(taken).toBeGreaterThan(counts.expressionTexts / 100);
}, 3_600_000);

/** The value, where a name may have it. */
function fitting(name: string, value: Outcome): Outcome {
	const type = names.get(name);
	if (type === undefined) throw new Error(`${name} was let through`);
	if (value === undefined || value === null) return value;
	const sort = { number: 'number', text: 'string', 'yes-no': 'boolean', list: 'object' }[type.is];
	return typeof value === sort ? value : undefined;
}

describe('what could run, loop or grow is refused', () => {
	test.each([
		['a pattern that backtracks', `boost.kind.matches("${'(a+)+'.repeat(20)}$")`],
		['macros in macros', `${'engine.history.all(x, '.repeat(20)}true${')'.repeat(20)}`],
		['a hundred brackets', `${'('.repeat(100)}true${')'.repeat(100)}`],
		['a hundred choices', `${'true ? true : '.repeat(70)}true`],
		['a list that doubles', `engine.history + engine.history == engine.history`],
		['a text that doubles', `"${'x'.repeat(300)}" + "${'x'.repeat(300)}" == "x"`],
		['a map', '{"a": 1}.a == 1'],
		['a made thing', 'engine.Bore{x: 1} == 1'],
		['a type', 'type(engine.bore) == double'],
		['the prototype', 'engine.__proto__ == 1'],
		['the constructor', 'engine.constructor == 1'],
		['the constructor of a list', 'engine.history.constructor == 1'],
		['a property of a text', '"x".length == 1'],
		['an index of a text', '"x"[0] == "x"'],
		['now', 'timestamp("2020-01-01T00:00:00Z") < now'],
		['a thousand and one characters', `engine.bore > engine.bore ${' '.repeat(1000)}`],
	])('%s', (_, text) => {
		const { tree, problems } = compiled(text);
		expect(tree).toBeNull();
		expect(problems.length).toBe(1);
	});
});

test.each([
	['a hundred not', `${'!'.repeat(100)}true`],
	['a hundred and', `true${' && true'.repeat(100)}`],
	['fifty choices in each other', `${'true ? true : '.repeat(50)}true`],
])('%s are taken, and cost no more than they are long', (_, text) => {
	expect(bind(compiled(text).tree!, () => () => undefined)()).toBe(true);
});
