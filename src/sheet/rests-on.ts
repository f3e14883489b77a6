import { canonicalAnswer } from './canonical.ts';
import type { Question } from './question.ts';
import { type Answer, answerTo, type Sheet } from './sheet.ts';

/** What some answers are now, for a record that says what it rests on: without how they are known, which moves nothing. */
export function restingOn(sheet: Sheet, ids: Iterable<string>): Record<string, Answer> {
	return Object.fromEntries(
		[...new Set(ids)].sort().map((id): [string, Answer] => {
			const { value, unit } = answerTo(sheet, id) ?? {};
			if (value === undefined) return [id, { known: 'not-known' }];
			return [id, unit === undefined ? { value } : { value, unit }];
		}),
	);
}

/** Which of the answers that a record rests on have another value now. Another unit for the same value is none. */
export function changedSince(
	rests_on: Readonly<Record<string, Answer>>,
	sheet: Sheet,
	questions: readonly Question[],
): string[] {
	const asked = new Map(questions.map(question => [question.id, question]));
	return Object.entries(rests_on).flatMap(([id, then]) => {
		const question = asked.get(id);
		return question && isSame(question, then, answerTo(sheet, id) ?? { known: 'not-known' }) ? [] : [id];
	});
}

function isSame(question: Question, then: Answer, now: Answer): boolean {
	if (JSON.stringify([then.value, then.unit]) === JSON.stringify([now.value, now.unit])) return true;
	if (then.value === undefined || now.value === undefined) return false;
	return sameness(readAs(question, then)) === sameness(readAs(question, now));
}

/** A record may be from a program in which the answer was another: what can no longer be read is not the same. */
function readAs(question: Question, answer: Answer): unknown {
	try {
		return canonicalAnswer(question, answer).value;
	} catch {
		return null;
	}
}

/** Numbers to seven digits: what is behind them is the noise of a conversion. */
const sameness = (value: unknown): string =>
	JSON.stringify(value, (_, inside) => (typeof inside === 'number' ? Number(inside.toPrecision(7)) : inside));
