import type { Stage } from '../rulebook/rulebook.ts';
import type { Question } from '../sheet/question.ts';
import type { Assessment } from './assess.ts';
import type { Finding } from './audit.ts';
import { courseOf, onlyKnownFrom, shownAt, standsInTheWay } from './stages.ts';

/** A missing answer that something serious waits for. */
export interface FindOut {
	readonly question: Question;
	/** The first stage that waits for it: it is asked there, once. */
	readonly stage: Stage;
	/** Everything serious that waits for it, in any stage, most urgent first. */
	readonly settles: readonly Finding[];
}

/** The missing answers that keep a stage from being ready, most urgent first: a line an answer, not a line a rule. */
export function findOuts({ audit, model, state }: Pick<Assessment, 'audit' | 'model' | 'state'>): FindOut[] {
	const early = ({ stage }: Finding, answer: string) => !onlyKnownFrom(stage, [model.judge.knownFrom(answer)]);
	return asked(
		audit.findings.filter(finding => finding.verdict === 'cannot-tell' && standsInTheWay(finding)),
		early,
		{ model, state },
	);
}

/** What shows only during a stage and is to be proved then: the answers that its lines wait for. */
export const proveDuring = ({ audit, model, state }: Pick<Assessment, 'audit' | 'model' | 'state'>): FindOut[] =>
	asked(
		audit.findings.filter(finding => finding.prove_during),
		() => true,
		{ model, state },
	);

/** The answers that some findings wait for, a line an answer. */
function asked(
	findings: readonly Finding[],
	counts: (finding: Finding, answer: string) => boolean,
	{ model, state }: Pick<Assessment, 'model' | 'state'>,
): FindOut[] {
	const waiting = new Map<string, Finding[]>();
	for (const finding of findings) {
		for (const answer of finding.missing)
			if (counts(finding, answer)) waiting.set(answer, [...(waiting.get(answer) ?? []), finding]);
	}
	const course = courseOf(state);
	const questions = new Map(model.rulebook.questions.map(question => [question.id, question]));
	return [...waiting].flatMap(([answer, settles]) => {
		const question = questions.get(answer);
		// What is no answer of the interview, as a pin of a plug, has a line of its own.
		return question ? [{ question, stage: shownAt(settles[0]!.stage, course), settles }] : [];
	});
}
