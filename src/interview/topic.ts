import type { Question } from '../sheet/question.ts';
import { answerTo } from '../sheet/sheet.ts';
import { formatAnswer } from '../wording/format.ts';
import type { State } from './state.ts';

/** What is answered of a question's topic besides the question, each with its label. */
export function answeredInTopic({ model, sheet }: State, question: Question): string[] {
	return model.rulebook.questions
		.filter(({ topic, id }) => topic === question.topic && id !== question.id)
		.flatMap(other => {
			const answer = answerTo(sheet, other.id);
			return answer?.value === undefined ? [] : [`${other.label}: ${formatAnswer(other, answer, sheet.units)}`];
		});
}
