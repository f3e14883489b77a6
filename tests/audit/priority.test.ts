import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Finding } from '../../src/audit/audit.ts';
import { byPriority, inOrder } from '../../src/audit/priority.ts';
import { harms, stages } from '../../src/rulebook/rulebook.ts';
import { seed } from '../counts.ts';

const plain: Finding = {
	rule: 'a.b',
	subject: null,
	section: 'a',
	stage: 'move',
	harm: 'wear',
	verdict: 'fails',
	unproved: false,
	prove_during: false,
	not_wanted: false,
	covered_by: null,
	sure: 1,
	title: '',
	why: '',
	do: [],
	prove: '',
	parts: [],
	numbers: {},
	missing: [],
	assumed: [],
	cautions: [],
	source: '',
	distance: 0,
};

const findings = fc.record({
	rule: fc.constantFrom('a.one', 'a.two', 'b.one'),
	subject: fc.constantFrom(null, 'x', 'y'),
	stage: fc.constantFrom(...stages),
	harm: fc.constantFrom(...harms),
	sure: fc.constantFrom(null, 0.5, 0.9, 1),
	distance: fc.constantFrom(null, 0, 0.2, 3),
});

test.each([
	['stage goes before harm', { stage: 'crank', harm: 'annoys' }, { stage: 'fire', harm: 'person' }],
	['harm goes before how sure', { harm: 'person', sure: 0.4 }, { harm: 'engine', sure: 1 }],
	['how sure goes before how far', { sure: 0.9, distance: 0.01 }, { sure: 0.6, distance: 5 }],
	['how far goes before the id', { rule: 'z.z', distance: 0.5 }, { rule: 'a.a', distance: 0.1 }],
	['the id decides last', { rule: 'a.a' }, { rule: 'a.b' }],
	['then the subject', { subject: '2' }, { subject: '3' }],
] as const)('%s', (_, first, second) => {
	expect(byPriority({ ...plain, ...first }, { ...plain, ...second })).toBeLessThan(0);
	expect(byPriority({ ...plain, ...second }, { ...plain, ...first })).toBeGreaterThan(0);
});

test('it is a total order: antisymmetric, transitive, equal only for the same rule and subject', () => {
	fc.assert(
		fc.property(findings, findings, findings, (x, y, z) => {
			const [a, b, c] = [x, y, z].map(some => ({ ...plain, ...some })) as [Finding, Finding, Finding];
			expect(Math.sign(byPriority(a, b)) + Math.sign(byPriority(b, a))).toBe(0);
			if (byPriority(a, b) <= 0 && byPriority(b, c) <= 0) expect(byPriority(a, c)).toBeLessThanOrEqual(0);
			if (byPriority(a, b) === 0) expect([a.rule, a.subject]).toEqual([b.rule, b.subject]);
		}),
		{ seed },
	);
});

test('fails come first, then what cannot be decided, then the rest by id', () => {
	const some = (['holds', 'cannot-tell', 'does-not-apply', 'fails', 'not-evaluated'] as const).map(
		(verdict, index) => ({
			...plain,
			verdict,
			rule: `a.${'edcba'[index]}`,
		}),
	);
	expect(inOrder(some).map(({ verdict }) => verdict)).toEqual([
		'fails',
		'cannot-tell',
		'not-evaluated',
		'does-not-apply',
		'holds',
	]);
});
