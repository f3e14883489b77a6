import type { State } from '../../graph/solve.ts';
import type { Plugs } from '../../plugs/parts.ts';
import { unwantedOn } from '../../quantities/wanted.ts';
import type { Verdict } from '../../rulebook/judge.ts';
import { namesRead } from '../../rulebook/reads.ts';
import type { Rule } from '../../rulebook/rulebook.ts';
import type { Model } from '../model.ts';
import { onlyKnownFrom } from '../stages.ts';
import { isGrave } from './clean-pulls.ts';

/** Whether a line of the sheet is another one at another boost: it names a limit, the lowest of them, or the spring. */
const movesWithBoost = (rule: Rule): boolean =>
	rule.limit.length > 0 || namesRead(rule).has('boost.lowest_limit') || namesRead(rule).has('boost.spring');

/**
 * The lines of harm to engine or people that fail or cannot be decided at a step: those of the log without exception, as a whole
 * and of one pull, those of the sheet that move with boost as they are there; the other ones of the sheet as they stand now,
 * so far as they keep a stage from being ready. In words.
 *
 * @param there the state at the step, with the readings of that pull extrapolated to it
 * @param now the state as it is
 * @param subject that pull, by its place in the log from 1
 */
export function openLines(
	{ judge, rulebook }: Model,
	there: State,
	now: State,
	plugs: Plugs | null,
	subject: number,
): string[] {
	const unwanted = unwantedOn(now, rulebook.questions);
	const isOpen = (verdict: Verdict): boolean => {
		const { rule, missing } = verdict;
		if (!isGrave(verdict) || verdict.verdict === 'holds' || verdict.verdict === 'does-not-apply') return false;
		if (rule.section === 'log') return verdict.subject === null || verdict.subject === String(subject);
		if (verdict.verdict !== 'cannot-tell') return true;
		return !onlyKnownFrom(rule.stage, missing.map(judge.knownFrom)) && !missing.some(answer => unwanted.has(answer));
	};
	const moves = ({ rule }: Verdict) => rule.section === 'log' || movesWithBoost(rule);
	const open = [
		...judge.judge(there, plugs).filter(verdict => moves(verdict) && isOpen(verdict)),
		...judge.judge(now, plugs).filter(verdict => !moves(verdict) && isOpen(verdict)),
	];
	return [
		...new Set(
			open.map(({ rule, verdict }) => `${verdict === 'cannot-tell' ? 'cannot be judged' : 'fails'}: ${rule.title}`),
		),
	];
}
