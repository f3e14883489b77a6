import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answerTo, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { audited } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { makeChanges } from '../support/changed-answer.ts';
import { demoSheets } from '../support/demo.ts';
import { testModel } from '../support/model.ts';
import { randomSheet } from '../support/random-sheet.ts';
import { openedBy, otherAnswers } from '../support/removals.ts';
import { finished } from './finished.ts';

const model = testModel();
const { questions } = model.rulebook;
const sheets = [...finished, ...demoSheets()];

/** Every choice of the whole builds and the demos; of numbers, of variants and where plugs are read a twelfth. At length all. */
const triedOn = (name: string, { plugs }: Sheet) =>
	questions.filter(({ kind }, index) => {
		const whole = !plugs && !/never/.test(name) && (kind === 'choice' || kind === 'several');
		return counts.everyAnswer || whole || index % 12 === 0;
	});

test.each(sheets)('no answer taken away opens a gate: %s', (name, sheet) => {
	const changed = makeChanges(sheet, model);
	const tried = triedOn(name, sheet);
	expect(tried.flatMap(otherAnswers).length).toBeGreaterThan(60);
	expect(tried.flatMap(question => openedBy(sheet, question, otherAnswers(question), model, changed))).toEqual([]);
});

test('nor does one taken away from a random build', () => {
	fc.assert(
		fc.property(fc.integer(), fc.nat(), (start, place) => {
			const sheet = randomSheet(model.rulebook, model.graph, chance(start));
			const there = questions.filter(({ id }) => answerTo(sheet, id) !== undefined);
			const question = there[place % there.length]!;
			expect(openedBy(sheet, question, [answerTo(sheet, question.id)!], model)).toEqual([]);
		}),
		{ seed, numRuns: counts.removals },
	);
});

test('what one answer reaches, worked out anew, comes to what the whole audit does', () => {
	for (const [at, [name, sheet]] of sheets.entries()) {
		const changed = makeChanges(sheet, model);
		for (const question of questions.filter((_, index) => index % (counts.everyAnswer ? 9 : 421) === at))
			for (const answer of [otherAnswers(question)[0], undefined]) {
				const { lines, open } = changed(question.id, answer);
				const { findings, stages } = audited(withAnswer(sheet, question.id, answer)).audit;
				const standing = (line: (typeof lines)[number]) =>
					`${line.rule} ${line.stage} ${line.harm} ${line.verdict} ${line.unproved} ${line.prove_during} ${line.not_wanted}`;
				expect(lines.map(standing).sort(), `${name}, ${question.id}`).toEqual(findings.map(standing).sort());
				expect(open).toBe(stages.filter(({ ready }) => ready).length);
			}
	}
});
