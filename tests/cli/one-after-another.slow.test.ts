import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { OneAfterAnother } from '../../src/cli/one-after-another.ts';
import { printJson } from '../../src/report/json.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { BadSheet } from '../../src/sheet/problem.ts';
import type { UnitSet } from '../../src/sheet/question.ts';
import { type Answer, answerTo, emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { anySheet } from '../quantities/any-sheet.ts';
import { brokenBuild, thirdOf } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { randomSheet } from '../support/random-sheet.ts';

const model = testModel();
const { rulebook, graph } = model;
const date = '2026-05-01';
const tool = '0.0.0';

/** What a sheet's text gives by itself, in a program that has seen no other: an audit, or what is wrong. */
function alone(text: string, units?: UnitSet): string {
	const checked = checkSheet(JSON.parse(text), rulebook.questions);
	return printJson(assess(model, checked, { date, units: units ?? checked.sheet.units, tool, draws: 0 }).audit);
}

/** Fails at the first sheet whose audit is another one after those before it than by itself. */
function expectSame(texts: Iterable<string>, units?: UnitSet): number {
	const sheets = new OneAfterAnother(model, { tool, units });
	let good = 0;
	for (const text of texts) {
		const told = outcome(() => sheets.audit(text, date).join(''));
		expect(told).toBe(outcome(() => alone(text, units)));
		if (told.startsWith('{')) good++;
	}
	return good;
}

function outcome(run: () => string): string {
	try {
		return run();
	} catch (error) {
		if (error instanceof BadSheet) return error.message;
		throw error;
	}
}

const random = chance(seed);
const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
const starts = [
	buildSheet('boosted'),
	buildSheet('unboosted'),
	brokenBuild('a\u001b"\u202e'),
	thirdOf(buildSheet('boosted')),
	emptySheet('nothing'),
];

/** One answer taken from another build, made not known, taken away, or said with other words around the same value. */
function withOneChanged(sheet: Sheet, other: Sheet): Sheet {
	const { id } = pick(rulebook.questions);
	const answer = answerTo(sheet, id);
	const changes: (Answer | undefined)[] = [answerTo(other, id), { known: 'not-known' }, undefined];
	if (answer) changes.push({ ...answer, note: 'seen again' }, { ...answer, known: 'estimate' });
	return withAnswer(sheet, id, pick(changes));
}

/** Variants of builds: some answers changed each time, now and then another build, other units, or a line that is no sheet. */
function* variants(count: number): Generator<string> {
	let sheet = pick(starts);
	for (let index = 0; index < count; index++) {
		const lot = random();
		if (lot < 0.1) sheet = pick(starts);
		else if (lot < 0.2) sheet = randomSheet(rulebook, graph, random);
		else if (lot < 0.3) sheet = { ...sheet, units: pick(['us', 'metric'] as const) };
		const other = pick([...starts, randomSheet(rulebook, graph, random)]);
		for (let changes = Math.floor(random() * 4); changes > 0; changes--) sheet = withOneChanged(sheet, other);
		yield JSON.stringify(sheet);
		if (lot > 0.95) yield JSON.stringify({ ...sheet, units: 'none', answers: { engine: { bore: { value: 1 } } } });
	}
}

test('a sheet gets the audit that it would get alone, whatever sheets came before it', () => {
	expect(expectSame(variants(counts.edits / 2))).toBeGreaterThan(counts.edits / 4);
});

test('what was assessed in other units, or with draws, is no help and does no harm', () => {
	const checked = checkSheet(buildSheet('unboosted'), rulebook.questions);
	const options = { date, units: 'us', tool, draws: 0 } as const;
	const { audit } = assess(model, checked, options);
	for (const others of [{ units: 'metric' }, { draws: 20 }] as const)
		expect(assess(model, checked, options, assess(model, checked, { ...options, ...others })).audit).toEqual(audit);
	const drawn = { ...options, draws: 20 };
	expect(assess(model, checked, drawn, assess(model, checked, options)).audit).toEqual(
		assess(model, checked, drawn).audit,
	);
});

test('the same in one unit set for all', () => {
	expect(expectSame(variants(counts.sheets), 'metric')).toBeGreaterThan(counts.sheets / 2);
});

test('answers of a full build taken away and put back, one after the other', () => {
	for (const start of [buildSheet('boosted'), buildSheet('unboosted')]) {
		const answered = rulebook.questions.map(({ id }) => id).filter(id => answerTo(start, id));
		const ids = answered.filter(() => random() < counts.sheets / answered.length / 2);
		const texts = ids.flatMap(id => [start, withAnswer(start, id, undefined)]).map(sheet => JSON.stringify(sheet));
		expect(expectSame(texts)).toBe(texts.length);
	}
});

test('sheets of anything at all between two of a build', () => {
	const any = fc.oneof(anySheet(rulebook.questions, 'plausible'), anySheet(rulebook.questions, 'hard', 0.5));
	const sheets = fc.sample(any, { seed, numRuns: Math.ceil(counts.sheets / 4) });
	const texts = sheets.flatMap(sheet => [sheet, pick(starts), sheet]).map(sheet => JSON.stringify(sheet));
	expect(expectSame(texts)).toBeGreaterThan(counts.sheets / 4);
});
