import type { Outcome } from '../../expressions/tree.ts';
import type { Fit } from '../../fit/fit.ts';
import { slotNamed } from '../../graph/graph.ts';
import type { State } from '../../graph/solve.ts';
import type { LogResults } from '../../log/results.ts';
import type { Plugs } from '../../plugs/parts.ts';
import type { UnitSet } from '../../sheet/question.ts';
import type { RecordedFigure, Sheet } from '../../sheet/sheet.ts';

import { valueIn } from '../conditions.ts';
import type { Fitted } from '../fitted.ts';
import { stateWithLog, withFigures } from '../logged.ts';
import type { Model } from '../model.ts';
import { highestWithin, type LimitDraws, limitDraws, lowerOf, passedAt } from './chance.ts';
import { isGrave, type JudgedPull, numberIn, pullsOf } from './clean-pulls.ts';
import { extrapolated } from './extrapolated.ts';
import { openLines } from './open-lines.ts';
import { cutOver, type Watch, watchAt } from './watch.ts';

/** The next step in boost, Pa: what to watch, in kept units, and what it rests on in words. */
export interface BoostStep {
	readonly boost: number;
	readonly watch: readonly Watch[];
	readonly why: string;
}

/** One step, or none and what keeps it from being one. Neither where nothing blows. */
export interface NextStep {
	readonly steps: readonly BoostStep[];
	readonly refused: readonly string[];
}

/** A log of this car, and which of the answers that it rests on have another value by now. */
export interface LogOfCar {
	readonly name: string;
	readonly quantities: LogResults;
	readonly changed: readonly string[];
}

export interface Asked {
	readonly model: Model;
	/** With the answers that the logs settle. */
	readonly sheet: Sheet;
	/** Solved with the newest log, at the fitted center where a fit applies. */
	readonly state: State;
	readonly fitted: Fitted | null;
	/** The newest last. */
	readonly logs: readonly LogOfCar[];
	readonly plugs: Plugs | null;
	readonly units: UnitSet;
	readonly draws?: number;
}

/** What a fit has to be worth, in independent draws, for a chance to be counted. */
const leastEffective = 400;
/** Draws of a fit that a chance is counted in. */
const enough = 1000;
const psi = 6894.757;
/** Of the draws so many may have passed a limit; Pa over what was logged at most; Pa that the pressure sensor keeps. */
const [mostPassed, farthest, underTop] = [0.05, 2 * psi, 10_000] as const;
/** What a step is rounded down to, Pa, and the least that is one. */
const rounding = { us: 0.1 * psi, metric: 1000 } as const;
/** Air outside where a log does not have it: the coldest and the warmest that are likely, K. */
const unlogged = [276.5, 309.5] as const;

/** Limits that a log bears out near a step, and the figure of a clean pull that does; every other one counts at the lower of before and after. */
const borneOutBy: Readonly<Record<string, string>> = {
	'injectors.boost_limit': 'log.duty_peak',
	'fuel.pump_boost_limit': 'log.rail_held_low',
	'sensors.meter_boost_limit': 'log.meter_volts_peak',
	'ignition.boost_limit': 'log.stumbles',
	'engine.knock_boost_limit': 'log.knock_most',
	'boost.charge_temp_boost_limit': 'log.charge_temp_placed',
};

/**
 * The highest boost at which, draw by draw, the chance that any limit of harm to engine or people is passed is small on the
 * day of the log and on the hot day; at which each reading of the highest clean pull, gone on as manifold pressure does, and
 * each line of the audit pass; and not far over the last two clean pulls.
 */
export function nextStep(asked: Asked): NextStep {
	const { model, sheet, state, fitted, logs, units } = asked;
	const fit = fitted?.fit ?? null;
	const kind = valueIn(state, 'boost.kind');
	if (kind === 'none') return { steps: [], refused: [] };
	const show = (boost: number) => model.wordings[units].show('boost.target', boost) ?? '';
	const refused: string[] = kind === undefined ? ['Whether this build has boost is not known.'] : [];
	if (logs.length === 0)
		refused.push('No log of this car: log two clean pulls at the boost of the spring or the pulley.');
	else if (!fit) refused.push('The model is not fitted to a log: that takes draws, and a pull to compare with.');
	else if (fit.applied && fit.effective < leastEffective)
		refused.push(`The fit is worth ${fit.effective} independent draws: too few for a chance of 5 %.`);
	else if (!fit.applied) refused.push('The log fits no car of these answers. Its report says what to look at first.');
	for (const { log } of fitted?.leftOut ?? []) refused.push(`The log ${log} fits no car of these answers.`);
	const plain = stateWithLog(model, sheet, null);
	refused.push(...wrongIn(asked, plain));
	const pulls = logs.length > 0 ? cleanPulls(asked, plain, refused) : null;
	const unplaced = unplacedIn(model, state);
	if (unplaced.length > 0) refused.push(`Not placed: ${unplaced.map(({ title }) => title).join('; ')}.`);
	const [target, top] = [valueIn(state, 'boost.target'), valueIn(state, 'sensors.map_full_scale')];
	if (typeof target !== 'number') refused.push('The boost target is not known.');
	if (top === undefined) refused.push("The top of the manifold pressure sensor's range is not known.");
	if (!holdsCut(asked)) refused.push('The sheet has no over-boost cut that works.');
	if (!pulls || !fit || refused.length > 0) return { steps: [], refused };
	const ambient = figureOf(logs[pulls.highest.log]!.quantities, 'log.ambient_pressure');
	const ends = [
		{ at: target as number, words: 'the target' },
		{ at: pulls.base + farthest, words: `${show(farthest)} over the lower of the last two clean pulls` },
		...(typeof top === 'number' ? [{ at: top - underTop - ambient, words: "the pressure sensor's top" }] : []),
	];
	const cap = ends.reduce((least, next) => (next.at < least.at ? next : least));
	const least = pulls.base + rounding[units] / 2;
	const none = (...why: string[]): NextStep => ({ steps: [], refused: why });
	if (!(cap.at > least))
		return none(
			`The last two clean pulls were at ${show(pulls.base)}, and ${cap.words} allows ${show(Math.max(0, cap.at))}.`,
		);
	const days = drawsOf(asked, fit, pulls.highest);
	const within = Math.min(...days.map(({ draws }) => highestWithin(draws, mostPassed)));
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
	const { boost, open } = highestPassing(asked, pulls.highest, pulls.base, upTo, rounding[units]);
	if (boost === null) return none(...open.map(line => `At ${show(upTo)}: ${line}.`));
	const chance = chanceAt(boost);
	const held =
		boost < upTo - rounding[units] ? open.join('; ') : upTo < cap.at ? `a chance of ${percent(mostPassed)}` : cap.words;
	return {
		steps: [
			{
				boost,
				watch: watchAt(dayState(asked, pulls.highest, boost), boost),
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

const figureOf = (results: LogResults, id: string): number => {
	const value = (results[id] as RecordedFigure | undefined)?.value;
	return typeof value === 'number' ? value : Number.NaN;
};

/** What a log found wrong that can harm engine or people, and no later one has shown to be right. */
function wrongIn({ model, logs }: Asked, plain: State): string[] {
	const decided = new Set<string>();
	return [...logs].reverse().flatMap(({ name, quantities }) => {
		const judged = model.judge
			.judge(withFigures(model, plain, quantities))
			.filter(({ rule }) => rule.section === 'log');
		const fails = judged.filter(one => isGrave(one) && one.verdict === 'fails' && !decided.has(one.rule.id));
		for (const { rule, verdict } of judged) if (verdict === 'fails' || verdict === 'holds') decided.add(rule.id);
		return [...new Set(fails.map(({ rule }) => rule.title))].map(title => `In the log ${name}: ${title}.`);
	});
}

interface CleanPulls {
	/** The lower peak of the last two, Pa. */
	readonly base: number;
	readonly highest: JudgedPull & { readonly peak: number };
}

/** The last two clean pulls since any answer that they rest on changed, and the highest; or what is wrong with the last ones. */
function cleanPulls({ model, logs }: Asked, plain: State, refused: string[]): CleanPulls | null {
	const all = logs.flatMap(({ quantities, changed }, log) =>
		changed.length > 0 ? [] : pullsOf(model.judge, withFigures(model, plain, quantities), quantities, log),
	);
	const clean = all.filter((one): one is CleanPulls['highest'] => one.faults.length === 0 && one.peak !== null);
	if (clean.length >= 2) {
		const [one, other] = clean.slice(-2);
		return {
			base: Math.min(one!.peak, other!.peak),
			highest: clean.reduce((most, next) => (next.peak > most.peak ? next : most)),
		};
	}
	for (const { name, changed } of logs)
		if (changed.length > 0)
			refused.push(`The log ${name} was made before a change of ${changed.join(', ')}: its pulls no longer count.`);
	const faults = all.filter(pull => pull.faults.length > 0).slice(-2);
	const many = clean.length === 0 ? 'No clean pull yet' : 'One clean pull only';
	refused.push(
		`${many}, and a step needs two.${faults.map(({ log, pull, faults }) => ` Pull ${pull} of ${logs[log]!.name}: ${faults.join('; ')}.`).join('')}`,
	);
	return null;
}

function unplacedIn({ rulebook, graph }: Model, { values }: State): { readonly title: string }[] {
	return boostLimits({ rulebook }).flatMap(id =>
		values[graph.slotOf.get(id)!] === undefined ? [rulebook.limits[id]!] : [],
	);
}

const boostLimits = ({ rulebook }: Pick<Model, 'rulebook'>): string[] =>
	Object.keys(rulebook.limits).filter(id => id.endsWith('boost_limit'));

/** The limits of boost that cost the engine, or people: those of rules of that harm. */
function graveLimits(model: Model, { values }: State): string[] {
	const grave = new Set(
		model.rulebook.rules.filter(({ harm }) => harm === 'engine' || harm === 'person').flatMap(({ limit }) => limit),
	);
	return boostLimits(model).filter(id => grave.has(id) && typeof values[model.graph.slotOf.get(id)!] === 'number');
}

function holdsCut({ model, state, plugs }: Asked): boolean {
	return model.judge
		.judge(state, plugs)
		.some(({ rule, verdict }) => rule.id === 'boost.no-overboost-cut' && verdict === 'holds');
}

/** The draws of the limits that count, on each day: that of the log (as cold and as warm as it may have been), the hot day. */
function drawsOf(
	asked: Asked,
	fit: Fit,
	{ log, pull }: JudgedPull,
): { readonly day: string; readonly draws: LimitDraws }[] {
	const { model, sheet, logs, draws: count = enough } = asked;
	const { quantities } = logs[log]!;
	const figure = (id: string) =>
		((quantities[id] ?? []) as readonly { readonly pull: number; readonly value: unknown }[]).find(
			one => one.pull === pull,
		)?.value;
	const outside = figureOf(quantities, 'log.ambient_temp');
	const ambient = figureOf(quantities, 'log.ambient_pressure');
	const days: { readonly day: string; readonly set: Readonly<Record<string, Outcome>> }[] = [
		...(Number.isNaN(outside) ? unlogged : [outside]).map(air => ({
			day: 'on the day of the log',
			set: { 'build.hot_day': air, 'air.ambient_pressure': ambient },
		})),
		{ day: 'on the hot day', set: {} },
	];
	return days.map(({ day, set }) => {
		const after = stateWithLog(model, sheet, quantities, fit.strays, set);
		const before = stateWithLog(model, sheet, quantities, undefined, set);
		const limits = graveLimits(model, after);
		const fitted = limitDraws(model, sheet, after, limits, count, fit.points);
		const unseen = limits.filter(id => typeof figure(borneOutBy[id] ?? '') !== 'number');
		const plain = limitDraws(model, sheet, before, unseen, count);
		return {
			day,
			draws: new Map([...fitted].map(([id, values]) => [id, plain.has(id) ? lowerOf(plain.get(id)!, values) : values])),
		};
	});
}

/** The state at a boost, with the readings of a pull gone on to it, on the day of its log or on the sheet's. */
function stateAt(
	{ model, sheet, logs, fitted, state }: Asked,
	{ log, pull, peak }: CleanPulls['highest'],
	boost: number,
): State {
	const { quantities } = logs[log]!;
	const results = extrapolated(quantities, pull, Math.max(boost, peak), numberIn(state, 'fuel.pressure'));
	return stateWithLog(model, sheet, results, fitted?.fit.strays, { 'boost.target': boost });
}

function dayState({ model, sheet, logs, fitted }: Asked, { log }: JudgedPull, boost: number): State {
	const { quantities } = logs[log]!;
	const outside = figureOf(quantities, 'log.ambient_temp');
	return stateWithLog(model, sheet, quantities, fitted?.fit.strays, {
		'boost.target': boost,
		'air.ambient_pressure': figureOf(quantities, 'log.ambient_pressure'),
		...(Number.isNaN(outside) ? {} : { 'build.hot_day': outside }),
	});
}

/** The highest boost, rounded down, at which every line passes; null where none over what was run does, with what is open at the top. */
function highestPassing(
	asked: Asked,
	pull: CleanPulls['highest'],
	from: number,
	to: number,
	by: number,
): { readonly boost: number | null; readonly open: readonly string[] } {
	const openAt = (boost: number) =>
		openLines(asked.model, stateAt(asked, pull, boost), asked.state, asked.plugs, pull.at + 1);
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
