import type { Verdict } from '../rulebook/judge.ts';
import type { Rule } from '../rulebook/rulebook.ts';

/** How a pin stands among the answers of `next`: it has no question of its own. */
export const pinAnswer = (subject: string): string => `plugs: ${subject}`;

/** The pins, or plugs, that something waits for, each with the rules that it would settle. */
export function waitingPins(
	verdicts: readonly Verdict[],
): { readonly answer: string; readonly flips: readonly Rule[] }[] {
	const waiting = new Map<string, Rule[]>();
	for (const { rule, verdict, subject, missing } of verdicts) {
		// What waits for an answer is told by that answer; a circuit that nobody has seen is at no pin yet.
		if (rule.each?.over !== 'plugs' || verdict !== 'cannot-tell' || subject === null || missing.length > 0) continue;
		if (rule.each.answer === 'plugs.unseen') continue;
		waiting.set(subject, [...(waiting.get(subject) ?? []), rule]);
	}
	return [...waiting].map(([subject, flips]) => ({ answer: pinAnswer(subject), flips }));
}
