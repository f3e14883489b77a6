import { expect, test } from 'vitest';
import type { Expression } from '../../../src/expressions/tree.ts';
import { tighter } from '../../../src/rulebook/compile/tighten.ts';
import type { Rule } from '../../../src/rulebook/rulebook.ts';

const x: Expression = ['name', 'x'];
const t: Expression = ['name', 't'];
const way = (holds: Expression, more: Partial<Rule> = {}) =>
	tighter({ holds, applies: null, thresholds: {}, ...more } as Rule, 't');

test.each<[string, Expression, 'up' | 'down' | null]>([
	['x <= t', ['<=', x, t], 'down'],
	['t > x', ['>', t, x], 'down'],
	['x >= t', ['>=', x, t], 'up'],
	['t < x', ['<', t, x], 'up'],
	['!(x <= t)', ['!', ['<=', x, t]], 'up'],
	['x <= t && x >= 1', ['&&', ['<=', x, t], ['>=', x, ['value', 1]]], 'down'],
	['x + t <= 1', ['<=', ['+', x, t], ['value', 1]], 'up'],
	['x >= 1 - t', ['>=', x, ['-', ['value', 1], t]], 'down'],
	['x <= t && x >= t', ['&&', ['<=', x, t], ['>=', x, t]], null],
	['x <= t * 2', ['<=', x, ['*', t, ['value', 2]]], null],
	['x == t', ['==', x, t], null],
	['x <= 1', ['<=', x, ['value', 1]], null],
])('%s: tighter %s', (_, holds, expected) => {
	expect(way(holds)).toBe(expected);
});

test('one that also decides where the rule applies, or another threshold, is not decided', () => {
	expect(way(['<=', x, t], { applies: ['>', x, t] })).toBe(null);
	expect(way(['<=', x, t], { thresholds: { other: { value: ['*', t, ['value', 2]], kind: 'ratio' } } })).toBe(null);
});
