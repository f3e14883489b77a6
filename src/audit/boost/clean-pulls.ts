import { numberIn, type State } from '../../graph/solve.ts';
import type { LogResults } from '../../log/results.ts';
import type { Judge, Verdict } from '../../rulebook/judge.ts';
import { figureInPull, figuresByPull, valueInPull } from './logged-figures.ts';

/** A pull of a log, and all that keeps it from being clean. */
export interface JudgedPull {
	/** The place of its log among those that count, its own place in that, and its number. */
	readonly log: number;
	readonly at: number;
	readonly pull: number;
	/** Highest boost, Pa; null where it is not known. */
	readonly peak: number | null;
	readonly faults: readonly string[];
}

/** Share of the redline to which a clean pull is at full load; deg that its advance may lie off the target; deg of knock retard that is noise. */
const [fullShare, advanceTolerance, maxKnock] = [0.9, 1, 0.5] as const;

/** What has to be read 4 times a second, and its name in a text. */
const sampledQuickly = {
	'log.lambda_quick': 'lambda',
	'log.rail_quick': 'fuel pressure',
	'log.manifold_quick': 'manifold pressure or boost',
	'log.charge_quick': 'intake air temperature',
	'log.knock_quick': 'knock retard',
} as const;

/** Harm that no step of boost is worth. */
export const isGrave = ({ rule, worse }: Verdict): boolean =>
	[rule.harm, worse?.harm].some(harm => harm === 'engine' || harm === 'person');

const isFailed = ({ verdict }: Verdict): boolean => verdict === 'fails';

/** The titles of lines as one fault, '' for none. */
const titles = (said: string, lines: readonly Verdict[]): string =>
	lines.length > 0 ? `${said}: ${[...new Set(lines.map(({ rule }) => rule.title))].join('; ')}` : '';

/**
 * The pulls of a log, each compared with what makes it clean: full and warm to 90 % of redline, advance at its target, five
 * channels read often enough, no rule of harm to engine or people that fails or cannot be decided.
 *
 * @param state solved with this log's figures
 */
export function pullsOf(judge: Judge, state: State, results: LogResults, log: number): JudgedPull[] {
	const verdicts = judge.judge(state, null, ({ section }) => section === 'log').filter(isGrave);
	const numbers = figuresByPull(results, 'log.boost_peak');
	const [redline, advance] = ['engine.redline', 'ignition.full_load_advance'].map(id => numberIn(state, id));
	return numbers.map(({ pull }, at): JudgedPull => {
		const value = (id: string) => valueInPull(results, id, pull);
		const number = (id: string) => figureInPull(results, id, pull);
		const open = verdicts.filter(
			({ subject, verdict }) =>
				(subject === null || subject === String(at + 1)) && verdict !== 'holds' && verdict !== 'does-not-apply',
		);
		const slow = Object.entries(sampledQuickly).flatMap(([id, words]) => (value(id) === true ? [] : [words]));
		const faults = [
			number('log.full_to_speed') >= fullShare * redline! ? '' : 'not at full load to 90 % of the redline',
			value('log.pull_warm') === true ? '' : 'engine not warm',
			Math.abs(number('log.advance_full') - advance!) <= advanceTolerance ? '' : 'spark advance not that of the sheet',
			slow.length === 0 ? '' : `not read 4 times a second: ${slow.join(', ')}`,
			slow.includes(sampledQuickly['log.knock_quick']) || number('log.knock_most') < maxKnock ? '' : 'knock',
			titles('fails', open.filter(isFailed)),
			titles(
				'cannot be judged',
				open.filter(verdict => !isFailed(verdict)),
			),
		].filter(Boolean);
		const peak = value('log.boost_peak');
		return { log, at, pull, peak: typeof peak === 'number' ? peak : null, faults };
	});
}
