import { describe, expect, test } from 'vitest';
import { Source } from '../../../src/rulebook/compile/source.ts';
import { longest } from '../../../src/rulebook/compile/yaml.ts';

/** The first problem of a text: line:col and message. */
function firstProblem(text: string): string {
	const { problems, root } = new Source({ path: 'x.yaml', text }, []);
	expect(root).toBeNull();
	return `${problems[0]!.line}:${problems[0]!.column} ${problems[0]!.message}`;
}

const names = [...'abcdefghi'];
/** Nine aliases of nine aliases ...: 9 to the 9th words, written out. */
const bomb = names
	.map((name, at) => {
		const parts = at === 0 ? 'x' : `*${names[at - 1]}`;
		return `${name}: &${name} [${Array.from({ length: 9 }, () => parts).join(', ')}]\n`;
	})
	.join('');

describe('a text is refused, with its place', () => {
	test.each([
		['an anchor', 'topic: x\nplace: &here 30\n', /^2:8 anchors .* write it out/],
		['an alias', 'topic: x\nplace: *here\n', /^2:8 aliases .* write it out/],
		['a text that looks like an alias', 'topic: x\nrules:\n  - *bold*\n', /^3:5 aliases .* quotes/],
		['a bomb of aliases', bomb, /^1:4 anchors/],
		['a merge key', 'topic: x\nrules:\n  - {<<: {a: b}}\n', /^3:6 merge keys/],
		['a tag', 'topic: !!js/function "x"\n', /^1:8 tags/],
		['a tag of its own', 'topic: !x y\n', /^1:8 tags/],
		['a directive', '%YAML 1.1\n---\ntopic: yes\n', /^1:1 directives/],
		['a second document', 'topic: x\n---\ntopic: y\n', /^2:1 a second document/],
		['a name that stands twice', 'topic: x\nplace: 1\ntopic: y\n', /^3:1 "topic" stands here twice/],
		['a name that stands twice, once in quotes', '{"a": 1, a: 2}', /^1:10 "a" stands here twice/],
		['a list for a name', '? [a, b]\n: c\n', /^1:3 a name before a colon is one word/],
		['a NUL', 'topic: x\nplace: \u0000\n', /^2:8 a character that cannot be seen \(U\+0000\)/],
		['a mark that turns the writing', 'topic: x\u202ey\n', /^1:9 a character that cannot be seen \(U\+202e\)/],
		[
			'an escape sequence in an escape',
			'topic: x\nwhy: "a\\e]0;b"\n',
			/^2:6 a character that cannot be seen \(U\+001b\)/,
		],
		['a NUL in an escape, in a name', 'topic: x\n"a\\0": b\n', /^2:1 a character that cannot be seen \(U\+0000\)/],
		['a tag of invisible letters', 'topic: x\u{e0041}\n', /^1:9 a character that cannot be seen \(U\+e0041\)/],
		['a percent sign bare', 'unit: %\n', /^1:7 not YAML: .*Put it in quotes, like unit: "%"/],
		['a tab', 'topic: x\nrules:\n\t- a\n', /^3:1 not YAML: .*[Tt]ab/],
		['a colon in a bare text', 'why: one: two\n', /^1:6 not YAML: .* goes in quotes/],
		['a quote that stays open', 'why: "one\nhow: two\n', /not YAML: .* goes in quotes/],
		['a list at the top', '- a\n- b\n', /^1:1 this is no mapping/],
		['a line too far in', 'a: b\n  c: d\n', /line 2 stands further in than line 1, which has its value already/],
		['nothing', '', /^1:1 this file is empty/],
		['a text too long', `a: ${'x'.repeat(longest)}`, /^1:1 a rule file has at most 200000 characters/],
	])('%s', (_, text, message) => {
		expect(firstProblem(text)).toMatch(message);
	});

	const steps = (sign: string) => Array.from({ length: 400 }, (_, depth) => `${'  '.repeat(depth)}${sign}\n`).join('');
	test.each([
		['flow lists, 10,000 deep', '['.repeat(10_000)],
		['flow mappings, 10,000 deep', '{a: '.repeat(10_000)],
		['lists on one line, 10,000 deep', '- '.repeat(10_000)],
		['lists, 400 deep', steps('-')],
		['mappings, 400 deep', steps('a:')],
		['explicit names, 10,000 deep', '? '.repeat(10_000)],
	])('%s', (_, text) => {
		expect(firstProblem(text)).toMatch(/more than 32 deep inside each other/);
	});
});

test.each([
	['many names', (n: number) => Array.from({ length: n }, (_, i) => `a${i}: 1\n`).join('')],
	['one name again and again', (n: number) => 'a: 1\n'.repeat(n)],
	['many list items', (n: number) => `a: [${'x, '.repeat(n)}]`],
	['an endless quoted text', (n: number) => `a: "${'x\\n'.repeat(n)}"`],
	['brackets that close nothing', (n: number) => ']'.repeat(n)],
	['colons', (n: number) => ':'.repeat(n)],
	['colons and spaces', (n: number) => ': '.repeat(n)],
	['comments', (n: number) => '#\n'.repeat(n)],
	['line breaks in a folded text', (n: number) => `a: >-\n${'  \n'.repeat(n)}`],
	['commas', (n: number) => `[${','.repeat(n)}`],
	['documents', (n: number) => '---\n'.repeat(n)],
	['questions', (n: number) => '?\n'.repeat(n)],
])('a large file of %s is read or refused, and does not hang', (_, make) => {
	const text = make(16_000);
	expect(text.length).toBeLessThanOrEqual(longest);
	const { root, problems } = new Source({ path: 'x.yaml', text }, []);
	expect(root !== null || problems.length > 0).toBe(true);
});

test('the mark stands under the fault, also in a long line', () => {
	const text = `topic: ${'x'.repeat(300)}\nplace: 1\nwhy: ${'y '.repeat(150)}\u0007\n`;
	const { problems } = new Source({ path: 'x.yaml', text }, []);
	expect(problems[0]).toMatchObject({ line: 3, column: 306 });
	const [line, mark] = problems[0]!.frame.split('\n');
	expect(mark!.length).toBeLessThan(90);
	expect(line!.slice(0, mark!.length).endsWith('y  ')).toBe(true);
});

test('line breaks of another system are no different', () => {
	const { problems } = new Source({ path: 'x.yaml', text: 'topic: x\r\nplace: *a\r\n' }, []);
	expect(problems[0]).toMatchObject({ line: 2, column: 8 });
	expect(problems[0]!.frame).not.toContain('\r');
});
