import type { Stage } from '../rulebook/rulebook.ts';
import type { Question } from '../sheet/question.ts';
import type { Assessment } from './assess.ts';
import type { Finding } from './audit.ts';
import { standsInTheWay } from './stages.ts';

/** A missing answer that something serious waits for. */
export interface FindOut {
	readonly question: Question;
	/** The first stage that waits for it: it is asked there, once. */
	readonly stage: Stage;
	/** Everything serious that waits for it, in any stage, most urgent first. */
	readonly settles: readonly Finding[];
}

/** The missing answers that keep a stage from being ready, most urgent first: a line an answer, not a line a rule. */
export function findOuts({ audit, model }: Pick<Assessment, 'audit' | 'model'>): FindOut[] {
	const waiting = new Map<string, Finding[]>();
	for (const finding of audit.findings) {
		if (finding.verdict !== 'cannot-tell' || !standsInTheWay(finding)) continue;
		for (const answer of finding.missing) waiting.set(answer, [...(waiting.get(answer) ?? []), finding]);
	}
	const questions = new Map(model.rulebook.questions.map(question => [question.id, question]));
	return [...waiting].flatMap(([answer, settles]) => {
		const question = questions.get(answer);
		// What is no answer of the interview, as a pin of a plug, has a line of its own.
		return question ? [{ question, stage: settles[0]!.stage, settles }] : [];
	});
}
