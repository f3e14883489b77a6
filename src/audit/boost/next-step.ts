import { slotNamed } from '../../graph/graph.ts';
import { type State, valueIn } from '../../graph/solve.ts';
import { psi } from '../../physics/constants.ts';
import { stateWithLog } from '../logged.ts';
import { highestWithin, passedAt } from './chance.ts';
import { dayState, drawsOf, stateAt, unplacedIn } from './days.ts';
import { type CleanPulls, cleanPulls, wrongIn } from './last-pulls.ts';
import { figureOf } from './logged-figures.ts';
import { openLines } from './open-lines.ts';
import type { StepInput } from './step-input.ts';
import { cutOver, type Watch, watchAt } from './watch.ts';

/** The next step in boost, Pa: what to watch, in canonical units, and what it rests on in words. */
export interface BoostStep {
	readonly boost: number;
	readonly watch: readonly Watch[];
	readonly why: string;
}

/** One step, or none and why. Neither where the engine is unboosted. */
export interface NextStep {
	readonly steps: readonly BoostStep[];
	readonly refused: readonly string[];
}

/** The independent draws that a fit needs for a chance to be counted. */
const minEffective = 400;
/** Share of draws that may have passed a limit; most Pa over the last clean pulls; Pa that the pressure sensor keeps in reserve. */
const [maxPassed, maxStep, sensorReserve] = [0.05, 2 * psi, 10_000] as const;
/** What a step is rounded down to, Pa, and the least that is one. */
const rounding = { us: 0.1 * psi, metric: 1000 } as const;

/**
 * The highest boost at which, draw by draw, the chance that any limit of harm to engine or people is passed is small on the
 * day of the log and on the hot day; at which each reading of the highest clean pull, extrapolated with manifold pressure, and
 * each line of the audit pass; and not far over the last two clean pulls.
 */
export function nextStep(input: StepInput): NextStep {
	const { model, sheet, state, fitted, logs, units } = input;
	const fit = fitted?.fit ?? null;
	const kind = valueIn(state, 'boost.kind');
	if (kind === 'none') return { steps: [], refused: [] };
	const show = (boost: number) => model.wordings[units].show('boost.target', boost) ?? '';
	const refused: string[] = kind === undefined ? ['Whether this build has boost is not known.'] : [];
	if (logs.length === 0)
		refused.push('No log of this car: log two clean pulls at the boost of the spring or the pulley.');
	else if (!fit) refused.push('The model is not fitted to a log: that takes draws, and a pull to compare with.');
	else if (fit.applied && fit.effective < minEffective)
		refused.push(`The fit is worth ${fit.effective} independent draws: too few for a chance of 5 %.`);
	else if (!fit.applied) refused.push('The log fits no car of these answers. Its report says what to look at first.');
	for (const { log } of fitted?.leftOut ?? []) refused.push(`The log ${log} fits no car of these answers.`);
	const plain = input.plain ?? stateWithLog(model, sheet, null);
	refused.push(...wrongIn(input, plain));
	const pulls = logs.length > 0 ? cleanPulls(input, plain, refused) : null;
	const unplaced = unplacedIn(model, state);
	if (unplaced.length > 0) refused.push(`Not placed: ${unplaced.map(({ title }) => title).join('; ')}.`);
	const [target, top] = [valueIn(state, 'boost.target'), valueIn(state, 'sensors.map_full_scale')];
	if (typeof target !== 'number') refused.push('The boost target is not known.');
	if (top === undefined) refused.push("The top of the manifold pressure sensor's range is not known.");
	if (!holdsCut(input)) refused.push('The sheet has no over-boost cut that works.');
	if (!pulls || !fit || refused.length > 0) return { steps: [], refused };
	const ambient = figureOf(logs[pulls.highest.log]!.quantities, 'log.ambient_pressure');
	const ends = [
		{ at: target as number, words: 'the target' },
		{ at: pulls.base + maxStep, words: `${show(maxStep)} over the lower of the last two clean pulls` },
		...(typeof top === 'number' ? [{ at: top - sensorReserve - ambient, words: "the pressure sensor's top" }] : []),
	];
	const cap = ends.reduce((least, next) => (next.at < least.at ? next : least));
	const least = pulls.base + rounding[units] / 2;
	const none = (...why: string[]): NextStep => ({ steps: [], refused: why });
	if (!(cap.at > least))
		return none(
			`The last two clean pulls were at ${show(pulls.base)}, and ${cap.words} allows ${show(Math.max(0, cap.at))}.`,
		);
	const days = drawsOf(input, fit, pulls.highest);
	const within = Math.min(...days.map(({ draws }) => highestWithin(draws, maxPassed)));
	const chanceAt = (boost: number) =>
		days
			.map(({ day, draws }) => ({ day, ...passedAt(draws, boost) }))
			.reduce((most, next) => (next.share > most.share ? next : most));
	const titleOf = (id: string) => model.rulebook.limits[id]?.title ?? id;
	if (!(within > least)) {
		const { day, share, first } = chanceAt(pulls.base);
		return none(
			`At ${show(pulls.base)}, where the last two clean pulls were, the chance that a limit is passed is already ${percent(share)} ${day}. First comes: ${titleOf(first)}.`,
		);
	}
	const upTo = Math.min(cap.at, within);
	const { boost, open } = highestPassing(input, pulls.highest, pulls.base, upTo, rounding[units]);
	if (boost === null) return none(...open.map(line => `At ${show(upTo)}: ${line}.`));
	const chance = chanceAt(boost);
	const held =
		boost < upTo - rounding[units] ? open.join('; ') : upTo < cap.at ? `a chance of ${percent(maxPassed)}` : cap.words;
	return {
		steps: [
			{
				boost,
				watch: watchAt(dayState(input, pulls.highest, boost), boost),
				why:
					`The last two clean pulls were at ${show(pulls.base)} or more. At ${show(boost)} the chance that any limit of harm to engine or people is passed is ` +
					`${percent(chance.share)} at most, ${chance.day}. First comes: ${titleOf(chance.first)}. What keeps it from being more: ${held}.`,
			},
		],
		refused: [],
	};
}

/** A solved state in which the step stands among the quantities: procedures read it there. */
export function withStep<Solved extends State>(state: Solved, next: NextStep | null): Solved {
	const [step] = next?.steps ?? [];
	if (!step) return state;
	const values = state.values.slice();
	values[slotNamed(state.graph, 'boost.next_step')] = step.boost;
	values[slotNamed(state.graph, 'boost.next_cut')] = step.boost + cutOver;
	return { ...state, values };
}

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.095 ? 1 : 0)} %`;

function holdsCut({ model, state }: StepInput): boolean {
	return model.judge
		.judge(state, null, ({ id }) => id === 'boost.no-overboost-cut')
		.some(({ verdict }) => verdict === 'holds');
}

/** The highest boost, rounded down, at which every line passes; null where none over what was run does, with what is open at the top. */
function highestPassing(
	input: StepInput,
	pull: CleanPulls['highest'],
	from: number,
	to: number,
	by: number,
): { readonly boost: number | null; readonly open: readonly string[] } {
	const plugs = input.plugs();
	const openAt = (boost: number) =>
		openLines(input.model, stateAt(input, pull, boost), input.state, plugs, pull.at + 1);
	const [first, last] = [Math.floor(from / by + 1e-9) + 1, Math.floor(to / by + 1e-9)];
	if (last < first) return { boost: null, open: ['less than one step is left'] };
	let open = openAt(last * by);
	if (open.length === 0) return { boost: last * by, open };
	let [good, bad] = [first - 1, last];
	while (bad - good > 1) {
		const middle = Math.floor((good + bad) / 2);
		const there = openAt(middle * by);
		if (there.length === 0) good = middle;
		else [bad, open] = [middle, there];
	}
	return { boost: good < first ? null : good * by, open };
}
