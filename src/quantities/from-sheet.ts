import type { Given } from '../graph/graph.ts';
import { bySection } from '../sheet/by-section.ts';
import { canonicalAnswer } from '../sheet/canonical.ts';
import type { Question } from '../sheet/question.ts';
import type { Answer, Sheet } from '../sheet/sheet.ts';
import { AtDensity } from './answer-node.ts';

/** What was read before: an answer never changes, and from one key to the next an interview's sheet is mostly the same answers. */
const read = new WeakMap<Answer, { readonly question: Question; readonly given: Given | null }>();

/** The answers of a checked sheet as the graph takes them. */
export function givenAnswers(sheet: Sheet, questions: readonly Question[]): Map<string, Given> {
	const given = new Map<string, Given>();
	for (const [section, asked] of bySection(questions)) {
		const inside = Object.hasOwn(sheet.answers, section) ? sheet.answers[section]! : {};
		for (const [name, question] of asked) {
			const answer = Object.hasOwn(inside, name) ? inside[name] : undefined;
			if (!answer) continue;
			let known = read.get(answer);
			if (known?.question !== question) read.set(answer, (known = { question, given: givenOf(question, answer) }));
			if (known.given) given.set(question.id, known.given);
		}
	}
	return given;
}

function givenOf(question: Question, answer: Answer): Given | null {
	const { value, needs, assumed } = canonicalAnswer(question, answer);
	if (value === undefined || value === null) return null;
	return { value: needs ? new AtDensity(value as AtDensity['flow'], needs.by) : value, assumed };
}
