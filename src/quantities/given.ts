import { keptAnswer } from '../sheet/kept.ts';
import type { Question } from '../sheet/question.ts';
import { type Answer, type Sheet, splitId } from '../sheet/sheet.ts';
import { AtDensity } from './answers.ts';
import type { GivenAnswer } from './pass.ts';

/** What was read before: an answer never changes, and from one key to the next an interview's sheet is mostly the same answers. */
const read = new WeakMap<Answer, { readonly question: Question; readonly given: GivenAnswer | null }>();

/** The answers of a checked sheet as the graph takes them. */
export function givenAnswers(sheet: Sheet, questions: readonly Question[]): Map<string, GivenAnswer> {
	const given = new Map<string, GivenAnswer>();
	const { answers } = sheet;
	for (const { question, section, name } of placesOf(questions)) {
		const inside = Object.hasOwn(answers, section) ? answers[section]! : null;
		const answer = inside && Object.hasOwn(inside, name) ? inside[name]! : null;
		if (!answer) continue;
		let known = read.get(answer);
		if (known?.question !== question) read.set(answer, (known = { question, given: givenOf(question, answer) }));
		if (known.given) given.set(question.id, known.given);
	}
	return given;
}

interface Place {
	readonly question: Question;
	readonly section: string;
	readonly name: string;
}

const places = new WeakMap<readonly Question[], readonly Place[]>();

/** Where a sheet has the answer to each question. */
function placesOf(questions: readonly Question[]): readonly Place[] {
	let known = places.get(questions);
	if (!known) {
		known = questions.map(question => {
			const [section, name] = splitId(question.id);
			return { question, section, name };
		});
		places.set(questions, known);
	}
	return known;
}

function givenOf(question: Question, answer: Answer): GivenAnswer | null {
	const { value, needs, assumed } = keptAnswer(question, answer);
	if (value === undefined || value === null) return null;
	return { value: needs ? new AtDensity(value as AtDensity['flow'], needs.by) : value, assumed };
}
