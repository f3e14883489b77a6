import { numberIn, type State } from '../../graph/solve.ts';
import type { LogResults } from '../../log/results.ts';
import type { Judge, Verdict } from '../../rulebook/judge.ts';
import type { RecordedInPull } from '../../sheet/sheet.ts';

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

/** Share of the redline up to which a clean pull is full; deg that its advance may lie off the target; deg of knock that is none. */
const [ofRedline, offAdvance, noKnock] = [0.9, 1, 0.5] as const;

/** What has to be read 4 times a second, and how it is called. */
const quick = {
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
 * The pulls of a log, each held against what makes it clean: full and warm to 90 % of redline, advance at its target, five
 * channels read often enough, no rule of harm to engine or people that fails or cannot be decided.
 *
 * @param state solved with this log's figures
 */
export function pullsOf(judge: Judge, state: State, results: LogResults, log: number): JudgedPull[] {
	const verdicts = judge.judge(state, null, ({ section }) => section === 'log').filter(isGrave);
	const numbers = (results['log.boost_peak'] ?? []) as readonly RecordedInPull[];
	const [redline, advance] = ['engine.redline', 'ignition.full_load_advance'].map(id => numberIn(state, id));
	return numbers.map(({ pull }, at): JudgedPull => {
		const figure = (id: string): unknown =>
			((results[id] ?? []) as readonly RecordedInPull[]).find(one => one.pull === pull)?.value;
		const number = (id: string): number => {
			const value = figure(id);
			return typeof value === 'number' ? value : Number.NaN;
		};
		const open = verdicts.filter(
			({ subject, verdict }) =>
				(subject === null || subject === String(at + 1)) && verdict !== 'holds' && verdict !== 'does-not-apply',
		);
		const slow = Object.entries(quick).flatMap(([id, words]) => (figure(id) === true ? [] : [words]));
		const faults = [
			number('log.full_to_speed') >= ofRedline * redline! ? '' : 'not at full load to 90 % of the redline',
			figure('log.pull_warm') === true ? '' : 'engine not warm',
			Math.abs(number('log.advance_full') - advance!) <= offAdvance ? '' : 'spark advance not that of the sheet',
			slow.length === 0 ? '' : `not read 4 times a second: ${slow.join(', ')}`,
			slow.includes(quick['log.knock_quick']) || number('log.knock_most') < noKnock ? '' : 'knock',
			titles('fails', open.filter(isFailed)),
			titles(
				'cannot be judged',
				open.filter(verdict => !isFailed(verdict)),
			),
		].filter(Boolean);
		const peak = figure('log.boost_peak');
		return { log, at, pull, peak: typeof peak === 'number' ? peak : null, faults };
	});
}
