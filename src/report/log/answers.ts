import type { LoggedAnswer } from '../../audit/log-answers.ts';
import type { LogReport } from '../../audit/log-report.ts';
import { formatAnswer } from '../../wording/format.ts';

/** An answer that a log settles, in words. */
export interface LoggedAnswerWords {
	readonly label: string;
	readonly now: string;
	/** How far off it may be; empty for a choice. */
	readonly spread: string;
	readonly before: string;
	/** Whether it stands as somebody measured or saw it. */
	readonly by_hand: boolean;
	/** The lines of the audit that turn with it; empty where none does. */
	readonly turns: string;
}

/** An answer that a log settles, in words and in the person's units. */
export function loggedAnswerWords(
	{ wording, model }: Pick<LogReport, 'wording' | 'model'>,
	{ answer, value, unit, spread, before, changes, by_hand }: LoggedAnswer,
): LoggedAnswerWords {
	const question = model.rulebook.questions.find(({ id }) => id === answer)!;
	const say = (given: unknown) =>
		formatAnswer(question, unit === null ? { value: given } : { value: given, unit }, wording.units);
	const old = before?.value === undefined ? null : formatAnswer(question, before, wording.units);
	return {
		label: wording.label(answer),
		now: say(value),
		spread: spread === null ? '' : say(spread),
		before: old ?? (before === null ? 'not answered' : 'not known'),
		by_hand,
		turns: changes.map(id => model.rulebook.rules.find(rule => rule.id === id)?.title ?? id).join('; '),
	};
}
