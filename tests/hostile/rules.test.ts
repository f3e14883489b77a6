import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solve } from '../../src/graph/solve.ts';
import { quantities } from '../../src/log/quantities.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { modelGraph } from '../../src/quantities/model-graph.ts';
import { Judge } from '../../src/rulebook/judge.ts';
import { namesRead } from '../../src/rulebook/reads.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { counts, seed } from '../counts.ts';
import { buildSheet, compileRules, ruleTexts } from '../support/model.ts';
import { everyTopic } from '../support/one-topic.ts';

// Real topic files, spoilt: letters, lines and values. Each loads or is refused with a place; what loads judges a build.

const topics = everyTopic();

const nasty = fc.constantFrom(
	'&a [*a, *a]',
	'*x',
	'!!js/function "x"',
	'<<: {a: 1}',
	'{',
	'[',
	'}',
	']',
	': ',
	'- ',
	'"',
	"'",
	'|\n',
	'>-\n',
	'\t',
	'\u0000',
	'__proto__',
	'constructor',
	'toString',
	'{'.repeat(50),
	'- '.repeat(50),
	'...',
	'---',
	'%YAML 9',
	'NaN',
	'.inf',
	'-.inf',
	'1e999',
	'1e308 psi',
	'-0',
	'true',
	'null',
	'~',
	'[]',
	'{}',
	'() => 1',
	'$(x)',
	'engine.bore',
	'boost.kind == "none"',
	'engine.history.all(x, true)',
	'1e308 * engine.bore * 1e308 > engine.bore',
	'engine.knock_boost_limit',
	'\n\n',
	'\r',
	'#',
	'\ud800',
	'\u202e',
);

const spoil = fc.record({
	at: fc.nat(1_000_000),
	to: fc.nat(1_000_000),
	length: fc.nat(60),
	with: fc.oneof(nasty, fc.string({ maxLength: 8 })),
	way: fc.constantFrom('cut', 'put', 'double', 'end', 'lose a line', 'move a line', 'set a value', 'change a value'),
});

type Spoil = typeof spoil extends fc.Arbitrary<infer One> ? One : never;

/** `name: value`, in a mapping on lines of its own or in braces. */
const value = /(?<=[a-z_]: )[^,{}[\]\n]+/g;

function spoilt(text: string, { at, to, length, with: other, way }: Spoil): string {
	const place = at % (text.length + 1);
	const lines = text.split('\n');
	const line = at % lines.length;
	const values = [...text.matchAll(value)];
	const pick = values[at % Math.max(1, values.length)];
	const put = (start: number, end: number, by: string) => text.slice(0, start) + by + text.slice(end);
	switch (way) {
		case 'cut':
			return put(place, place + length, '');
		case 'put':
			return put(place, place, other);
		case 'double':
			return put(place, place, text.slice(place, place + length));
		case 'end':
			return text.slice(0, place);
		case 'lose a line':
			return lines.toSpliced(line, 1).join('\n');
		case 'move a line':
			return lines.toSpliced(to % lines.length, 0, lines[line]!).join('\n');
		case 'set a value':
			return pick ? put(pick.index, pick.index + pick[0].length, other) : text;
		default: {
			const from = values[to % Math.max(1, values.length)];
			return pick && from ? put(pick.index, pick.index + pick[0].length, from[0]) : text;
		}
	}
}

test('a spoilt rule file loads or is refused with its place; nothing is thrown, nothing hangs', () => {
	let loaded = 0;
	fc.assert(
		fc.property(fc.constantFrom(...topics), fc.array(spoil, { minLength: 1, maxLength: 3 }), (topic, spoils) => {
			const text = spoils.reduce(spoilt, topic.text);
			const { rulebook, problems } = topic.compile(text);
			for (const { path, line, column, message, frame } of problems) {
				expect([path, line > 0, column > 0, message.length > 0]).toEqual([topic.path, true, true, true]);
				expect(frame).toMatch(/^ *\d+ \| .*\n +\| *\^$/u);
			}
			if (problems.length > 0) return;
			loaded++;
			judgeOwn(rulebook, topic.path);
		}),
		{ seed, numRuns: counts.ruleFiles },
	);
	console.info(`${loaded} of ${counts.ruleFiles} loaded`);
	// Of small faults some change words alone: those load. If none did, or all, the fuzz would be worth nothing.
	expect(loaded).toBeGreaterThan(counts.ruleFiles / 50);
	expect(loaded).toBeLessThan(counts.ruleFiles / 1.5);
	expect(Object.keys(Object.prototype)).toEqual([]);
}, 3_600_000);

const texts = ruleTexts();
const tables = texts.filter(({ path }) => !topics.some(topic => topic.path === path));

test('so does a spoilt table, build or procedure, with all files that lean on it', () => {
	fc.assert(
		fc.property(fc.constantFrom(...tables), fc.array(spoil, { minLength: 1, maxLength: 3 }), (table, spoils) => {
			const text = spoils.reduce(spoilt, table.text);
			const files = texts.map(file => (file === table ? { ...file, text } : file));
			for (const { line, column, message } of compileRules(files).problems)
				expect([line > 0, column > 0, message.length > 0]).toEqual([true, true, true]);
		}),
		// A whole rulebook is compiled each time: a hundred times the work of one topic.
		{ seed, numRuns: Math.ceil(counts.ruleFiles / 200) },
	);
}, 3_600_000);

/** Judges a build by the rules that a file brought, as an audit would. */
function judgeOwn(rulebook: Rulebook, path: string): void {
	const rules = rulebook.rules.filter(({ at }) => at.startsWith(`${path}:`));
	const graph = modelGraph(rulebook.questions, quantities);
	const given = givenAnswers(buildSheet('boosted'), rulebook.questions);
	const targets = rules.flatMap(rule => [...namesRead(rule)]).filter(name => graph.slotOf.has(name));
	const state = solve(graph, given, new Map(), targets);
	for (const { verdict, rule } of new Judge({ ...rulebook, rules }, graph.slotOf).judge(state))
		expect(['fails', 'holds', 'cannot-tell', 'does-not-apply', 'not-evaluated'], rule.id).toContain(verdict);
}
