import { keptAnswer } from '../sheet/kept.ts';
import type { Question } from '../sheet/question.ts';
import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { AtDensity } from './answers.ts';
import type { GivenAnswer } from './pass.ts';

/** The answers of a checked sheet as the graph takes them. */
export function givenAnswers(sheet: Sheet, questions: readonly Question[]): Map<string, GivenAnswer> {
	const given = new Map<string, GivenAnswer>();
	for (const question of questions) {
		const answer = answerTo(sheet, question.id);
		if (!answer) continue;
		const { value, needs, assumed } = keptAnswer(question, answer);
		if (value === undefined || value === null) continue;
		given.set(question.id, { value: needs ? new AtDensity(value as AtDensity['flow'], needs.by) : value, assumed });
	}
	return given;
}
