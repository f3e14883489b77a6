import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import { standsInTheWay } from '../../audit/stages.ts';
import type { Stage } from '../../rulebook/rulebook.ts';
import type { Question } from '../../sheet/question.ts';

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
	return [...waiting].map(([answer, settles]) => ({
		question: questions.get(answer)!,
		stage: settles[0]!.stage,
		settles,
	}));
}
