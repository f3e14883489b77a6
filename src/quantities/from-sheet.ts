import type { Given } from '../graph/graph.ts';
import { bySection } from '../sheet/by-section.ts';
import { canonicalAnswer } from '../sheet/canonical.ts';
import type { Question } from '../sheet/question.ts';
import type { Answer, Sheet } from '../sheet/sheet.ts';
import { AtDensity } from './answer-node.ts';

/** The answers of a checked sheet as the graph takes them. */
export function givenAnswers(sheet: Sheet, questions: readonly Question[]): Map<string, Given> {
	const given = new Map<string, Given>();
	for (const [section, asked] of bySection(questions)) {
		const inside = Object.hasOwn(sheet.answers, section) ? sheet.answers[section]! : {};
		for (const [name, question] of asked) {
			const answer = Object.hasOwn(inside, name) ? inside[name] : undefined;
			if (!answer) continue;
			const known = givenOf(question, answer);
			if (known) given.set(question.id, known);
		}
	}
	return given;
}

function givenOf(question: Question, answer: Answer): Given | null {
	const { value, needs, assumed } = canonicalAnswer(question, answer);
	if (value === undefined || value === null) return null;
	return { value: needs ? new AtDensity(value as AtDensity['flow'], needs.by) : value, assumed };
}
