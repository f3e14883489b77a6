import { Environment } from '@marcbachmann/cel-js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bind } from '../../src/expressions/bind.ts';
import { emptyNotes, type Trace, traced } from '../../src/expressions/trace.ts';
import type { Expression, Outcome } from '../../src/expressions/tree.ts';
import { compileExpression } from '../../src/rulebook/compile/expression.ts';
import type { Names } from '../../src/rulebook/compile/names.ts';
import { Source } from '../../src/rulebook/compile/source.ts';
import { counts, seed } from '../counts.ts';

const names: Names = new Map([
	['a.yes', { is: 'yes-no' }],
	['a.no', { is: 'yes-no' }],
	['a.open', { is: 'yes-no' }],
	['a.idle', { is: 'yes-no' }],
	['n.two', { is: 'number', kind: 'ratio' }],
	['n.five', { is: 'number', kind: 'ratio' }],
	['n.open', { is: 'number', kind: 'ratio' }],
	['t.colour', { is: 'text', choices: ['red', 'blue'] }],
	['l.marks', { is: 'list', choices: ['x', 'y'] }],
]);
const values: Readonly<Record<string, Outcome>> = {
	'a.yes': true,
	'a.no': false,
	'a.idle': null,
	'n.two': 2,
	'n.five': 5,
	't.colour': 'red',
	'l.marks': ['x'],
};
const reader = (name: string) => () => values[name];

function compile(text: string): Expression {
	const problems: never[] = [];
	const source = new Source({ path: 'x.yaml', text: `a: ${text}` }, problems);
	const compiled = compileExpression(source, { text, offset: 3 }, names);
	if (!compiled) throw new Error(JSON.stringify(problems));
	return compiled.tree;
}

const evaluate = (text: string): Outcome => bind(compile(text), reader)();

function traceOf(tree: Expression): Trace {
	const notes = emptyNotes();
	expect(traced(tree, reader)(notes)).toEqual(bind(tree, reader)());
	return notes;
}

const waitsFor = (tree: Expression): readonly string[] => traceOf(tree).blocking;

describe('a known part that decides, decides', () => {
	test.each([
		['a.open && a.no', false],
		['a.no && a.open', false],
		['a.open || a.yes', true],
		['a.yes || a.open', true],
		['a.open && a.yes', undefined],
		['a.open || a.no', undefined],
		['!a.open', undefined],
		['a.idle && a.no', false],
		['a.idle && a.yes', null],
		['a.idle && a.open', undefined],
		['n.open > 1', undefined],
		['n.open + 1 > 1 || a.yes', true],
		['a.yes ? n.two == 2 : n.open == 2', true],
		['a.open ? a.yes : a.yes', undefined],
		['t.colour in ["red", "blue"] && "x" in l.marks', true],
		['size(l.marks) == 1', true],
	] as const)('%s', (text, outcome) => {
		expect(evaluate(text)).toBe(outcome);
	});

	test('only what it waits for is named as missing', () => {
		expect([...waitsFor(compile('a.yes && (n.open > 1 || a.open)'))].sort()).toEqual(['a.open', 'n.open']);
		expect([...waitsFor(compile('a.no && n.open > 1'))]).toEqual([]);
	});

	test.each([
		['n.open > 1 && a.no', ['a.no'], []],
		['(n.open > n.five || n.two < 1) && (n.open > 3 || a.no) && n.open > n.two && a.no', ['a.no'], []],
		['(a.yes && n.open > 1) || (n.two == 2 && a.yes)', ['n.two', 'a.yes'], []],
		['a.yes ? n.two + n.open > 1 : a.no', ['a.yes', 'n.two', 'n.open'], ['n.open']],
		['a.open ? n.two == 2 : n.five == 5', ['a.open'], ['a.open']],
		['a.idle && (n.open > 1 || a.yes)', ['a.idle', 'a.yes'], []],
	] as const)('%s rests on %j and waits for %j', (text, read, blocking) => {
		expect(traceOf(compile(text))).toEqual({ read, blocking });
	});
});

describe('the whole table', () => {
	/** true, false, not known, does not apply. */
	const outcomes: Outcome[] = [true, false, undefined, null];
	const of = (tree: Expression, a: Outcome, b?: Outcome): Outcome => bind(tree, name => () => (name === 'a' ? a : b))();
	const [a, b]: Expression[] = [
		['name', 'a'],
		['name', 'b'],
	];

	test.each<['&&' | '||', Outcome[][]]>([
		[
			'&&',
			[
				[true, false, undefined, null],
				[false, false, false, false],
				[undefined, false, undefined, undefined],
				[null, false, undefined, null],
			],
		],
		[
			'||',
			[
				[true, true, true, true],
				[true, false, undefined, null],
				[true, undefined, undefined, undefined],
				[true, null, undefined, null],
			],
		],
	])('%s', (sign, table) => {
		expect(outcomes.map(left => outcomes.map(right => of([sign, a!, b!], left, right)))).toEqual(table);
	});

	test('!', () => {
		expect(outcomes.map(value => of(['!', a!], value))).toEqual([false, true, undefined, null]);
	});

	test('?:', () => {
		expect(outcomes.map(value => of(['?:', a!, ['value', 1], ['value', 2]], value))).toEqual([1, 2, undefined, null]);
	});

	test.each(['<', '<=', '>', '>=', '==', '!=', '+', '-', '*', '/'] as const)(
		'%s: what does not apply goes before what is not known',
		sign => {
			const numbers: Outcome[] = [3, undefined, null];
			const table = numbers.map(left => numbers.map(right => of([sign, a!, b!], left, right)));
			expect(table.map(row => row.slice(1))).toEqual([
				[undefined, null],
				[undefined, null],
				[null, null],
			]);
			expect(table.map(([first]) => first).slice(1)).toEqual([undefined, null]);
			expect(table[0]![0]).toBeDefined();
		},
	);
});

describe('figures', () => {
	test('that differ by the noise of arithmetic alone are one', () => {
		expect(evaluate('0.1 + 0.2 == 0.3')).toBe(true);
		expect(evaluate('0.1 + 0.2 <= 0.3')).toBe(true);
		expect(evaluate('0.1 + 0.2 > 0.3')).toBe(false);
		expect(evaluate('0.7 >= 0.1 * 7')).toBe(true);
		expect(evaluate('0.3 != 0.1 * 3')).toBe(false);
	});

	test('that differ by more are two', () => {
		expect(evaluate('1.00000000001 > 1')).toBe(true);
		expect(evaluate('0 < 0.0000000000000000000001')).toBe(true);
	});

	test('that are too large decide nothing', () => {
		expect(evaluate('1e300 * 1e300 > 1')).toBeUndefined();
		expect(evaluate('1e300 * 1e300 > 1 || a.yes')).toBe(true);
	});
});

test('what does not apply waits for nothing', () => {
	const idle: Expression = ['+', ['name', 'a.idle'], ['name', 'n.open']];
	expect([...waitsFor(['>', idle, ['value', 1]])]).toEqual([]);
	expect([...waitsFor(['&&', ['>', idle, ['value', 1]], ['name', 'a.open']])]).toEqual(['a.open']);
});

const number = fc.letrec<{ deep: string; leaf: string }>(tie => ({
	leaf: fc.constantFrom('n.two', 'n.five', '3', '0.5', '7.25'),
	deep: fc.oneof(
		{ maxDepth: 3 },
		tie('leaf'),
		fc.tuple(tie('deep'), fc.constantFrom('+', '-', '*'), tie('deep')).map(([x, op, y]) => `(${x} ${op} ${y})`),
		tie('deep').map(x => `(${x} / 2.0)`),
		tie('deep').map(x => `(-${x})`),
	),
})).deep;
const yesNo = fc.letrec<{ deep: string; leaf: string }>(tie => ({
	leaf: fc.oneof(
		fc.constantFrom(
			...['a.yes', 'a.no', 'true', 't.colour == "red"', 't.colour != "blue"', 't.colour in ["red", "blue"]'],
			...['"y" in l.marks', '"x" in l.marks'],
		),
		fc.tuple(number, fc.constantFrom('<', '<=', '>', '>=', '==', '!='), number).map(([x, op, y]) => `${x} ${op} ${y}`),
	),
	deep: fc.oneof(
		{ maxDepth: 4 },
		tie('leaf'),
		fc.tuple(tie('deep'), fc.constantFrom('&&', '||'), tie('deep')).map(([x, op, y]) => `(${x} ${op} ${y})`),
		tie('deep').map(x => `!(${x})`),
		fc.tuple(tie('deep'), tie('deep'), tie('deep')).map(([x, y, z]) => `(${x} ? ${y} : ${z})`),
	),
})).deep;

test('on known values it agrees with the library that the grammar comes from', () => {
	const library = new Environment({ unlistedVariablesAreDyn: true });
	const op = (a: string, b: string) => {
		for (const sign of ['+', '-', '*'] as const) {
			library.registerOperator(
				`${a} ${sign} ${b}: double` as never,
				((x: number, y: number) =>
					sign === '+' ? Number(x) + Number(y) : sign === '-' ? Number(x) - Number(y) : Number(x) * Number(y)) as never,
			);
		}
		library.registerOperator(
			`${a} / ${b}: double` as never,
			((x: number, y: number) => Number(x) / Number(y)) as never,
		);
	};
	op('int', 'double');
	op('double', 'int');
	const context = {
		a: { yes: true, no: false },
		n: { two: 2, five: 5 },
		t: { colour: 'red' },
		l: { marks: ['x'] },
	};
	// Whole numbers are written as decimals for the library: its whole numbers are another type, ours are not.
	const asDecimals = (text: string) => text.replace(/(?<![\w.])3(?![\w.])/g, '3.0');
	fc.assert(
		fc.property(yesNo, text => {
			expect(evaluate(text)).toBe(library.evaluate(asDecimals(text), context));
		}),
		{ seed, numRuns: counts.expressions },
	);
});
