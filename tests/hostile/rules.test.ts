import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantities } from '../../src/quantities/model/all.ts';
import { compileRulebook } from '../../src/rulebook/compile/compile.ts';
import { compileExpression } from '../../src/rulebook/compile/expression.ts';
import { namesOf } from '../../src/rulebook/compile/names.ts';
import { type Problem, Source } from '../../src/rulebook/compile/source.ts';
import { counts, seed } from '../counts.ts';
import { ruleTexts, testModel } from '../support/model.ts';

const texts = ruleTexts();
const tables = texts.filter(({ path }) => ['sections.yaml', 'sources.yaml', 'cautions.yaml'].includes(path));
const topics = texts.filter(({ path }) => path.includes('/') && !/^(examples|procedures)\//.test(path));

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
	'{{{{',
	'[[[[',
	'...',
	'---',
	'%YAML 9',
	'NaN',
	'.inf',
	'1e999',
	'() => 1',
	'$(x)',
	'\n\n',
	'#',
);
/** A place to cut, to double, or to put something nasty in. */
const spoil = fc.record({
	at: fc.nat(1_000_000),
	length: fc.nat(60),
	with: fc.oneof(nasty, fc.string({ maxLength: 8 })),
	way: fc.constantFrom('cut', 'put', 'double', 'end'),
});

test('a spoilt rule file loads or is refused with its place; nothing else happens', () => {
	fc.assert(
		fc.property(
			fc.constantFrom(...topics),
			fc.array(spoil, { minLength: 1, maxLength: 3 }),
			({ path, text }, spoils) => {
				const spoilt = spoils.reduce((now, { at, length, with: other, way }) => {
					const place = at % (now.length + 1);
					if (way === 'cut') return now.slice(0, place) + now.slice(place + length);
					if (way === 'double')
						return now.slice(0, place) + now.slice(place, place + length).repeat(2) + now.slice(place + length);
					return way === 'end' ? now.slice(0, place) : now.slice(0, place) + other + now.slice(place);
				}, text);
				const { problems } = compileRulebook([...tables, { path, text: spoilt }], quantities);
				for (const problem of problems) {
					expect(problem.line).toBeGreaterThan(0);
					expect(problem.column).toBeGreaterThan(0);
					expect(problem.message.length).toBeGreaterThan(0);
				}
			},
		),
		{ seed, numRuns: counts.ruleFiles },
	);
}, 600_000);

const names = namesOf(testModel().rulebook.questions, quantities);
const piece = fc.oneof(
	fc.constantFrom(
		'engine.bore',
		'boost.kind',
		'engine.history',
		'"none"',
		'"x"',
		'0.5',
		'3',
		'==',
		'<',
		'>=',
		'&&',
		'||',
		'!',
		'(',
		')',
		'[',
		']',
		'?',
		':',
		'in',
		'size(',
		'+',
		'-',
		'*',
		'/ 2.0',
		'.',
		',',
		'__proto__',
		'constructor',
		'matches',
		'.all(x, x)',
		'has(',
		'dyn(',
		'{}',
		'1e999',
		'0x1',
		'null',
		'true',
		'\\',
		'\u0000',
	),
	fc.string({ maxLength: 4 }),
);

test('a text of anything is no expression, or one that is checked; nothing is thrown', () => {
	fc.assert(
		fc.property(fc.array(piece, { maxLength: 14 }), pieces => {
			const text = pieces.join(' ');
			const problems: Problem[] = [];
			const source = new Source({ path: 'x.yaml', text: `a: ${text}` }, problems);
			const before = problems.length;
			const compiled = compileExpression(source, { text, offset: 3 }, names);
			if (compiled === null && problems.length < 100) expect(problems.length).toBeGreaterThan(before);
		}),
		{ seed, numRuns: counts.expressionTexts },
	);
}, 600_000);
