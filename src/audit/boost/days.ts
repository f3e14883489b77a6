import type { Outcome } from '../../expressions/tree.ts';
import type { Fit } from '../../fit/fit.ts';
import { likelyAmbient } from '../../fit/terms.ts';
import { numberIn, type State, valueIn } from '../../graph/solve.ts';
import { stateWithLog } from '../logged.ts';
import type { Model } from '../model.ts';
import { type LimitDraws, limitDraws, lowerOf } from './chance.ts';
import type { JudgedPull } from './clean-pulls.ts';
import { extrapolated } from './extrapolated.ts';
import type { CleanPulls } from './last-pulls.ts';
import { figureInPull, figureOf } from './logged-figures.ts';
import type { StepInput } from './step-input.ts';

/** Draws of a fit in which a chance is counted. */
const defaultDraws = 1000;

/** Limits that a log supports near a step, by the figure of a clean pull that does so; the others count at the lower of before and after. */
const supportedBy: Readonly<Record<string, string>> = {
	'injectors.boost_limit': 'log.duty_peak',
	'fuel.pump_boost_limit': 'log.rail_held_low',
	'sensors.meter_boost_limit': 'log.meter_volts_peak',
	'ignition.boost_limit': 'log.stumbles',
	'engine.knock_boost_limit': 'log.knock_most',
	'boost.charge_temp_boost_limit': 'log.charge_temp_placed',
};

/** The limits of boost that could not be worked out, for want of answers. */
export function unplacedIn({ rulebook }: Model, state: State): { readonly title: string }[] {
	return boostLimits({ rulebook }).flatMap(id => (valueIn(state, id) === undefined ? [rulebook.limits[id]!] : []));
}

const boostLimits = ({ rulebook }: Pick<Model, 'rulebook'>): string[] =>
	Object.keys(rulebook.limits).filter(id => id.endsWith('boost_limit'));

/** The limits of boost that cost the engine, or people: those of rules of that harm. */
function graveLimits(model: Model, state: State): string[] {
	const grave = new Set(
		model.rulebook.rules.filter(({ harm }) => harm === 'engine' || harm === 'person').flatMap(({ limit }) => limit),
	);
	return boostLimits(model).filter(id => grave.has(id) && typeof valueIn(state, id) === 'number');
}

/** The draws of the limits that count, on each day: that of the log (as cold and as warm as it may have been), the hot day. */
export function drawsOf(
	input: StepInput,
	fit: Fit,
	{ log, pull }: JudgedPull,
): { readonly day: string; readonly draws: LimitDraws }[] {
	const { model, sheet, logs, draws: count = defaultDraws } = input;
	const { quantities } = logs[log]!;
	const outside = figureOf(quantities, 'log.ambient_temp');
	const ambient = figureOf(quantities, 'log.ambient_pressure');
	const days: { readonly day: string; readonly set: Readonly<Record<string, Outcome>> }[] = [
		...(Number.isNaN(outside) ? likelyAmbient : [outside]).map(air => ({
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
		const unsupported = limits.filter(id => Number.isNaN(figureInPull(quantities, supportedBy[id] ?? '', pull)));
		const plain = limitDraws(model, sheet, before, unsupported, count);
		return {
			day,
			draws: new Map([...fitted].map(([id, values]) => [id, plain.has(id) ? lowerOf(plain.get(id)!, values) : values])),
		};
	});
}

/** The state at a boost, with the readings of a pull extrapolated to it. */
export function stateAt(
	{ model, sheet, logs, fitted, state }: StepInput,
	{ log, pull, peak }: CleanPulls['highest'],
	boost: number,
): State {
	const { quantities } = logs[log]!;
	const results = extrapolated(quantities, pull, Math.max(boost, peak), numberIn(state, 'fuel.pressure'));
	return stateWithLog(model, sheet, results, fitted?.fit.strays, { 'boost.target': boost });
}

/** The car at a boost on the day of a log, with the figures that were read in it. */
export function dayState({ model, sheet, logs, fitted }: StepInput, { log }: JudgedPull, boost: number): State {
	const { quantities } = logs[log]!;
	const outside = figureOf(quantities, 'log.ambient_temp');
	return stateWithLog(model, sheet, quantities, fitted?.fit.strays, {
		'boost.target': boost,
		'air.ambient_pressure': figureOf(quantities, 'log.ambient_pressure'),
		...(Number.isNaN(outside) ? {} : { 'build.hot_day': outside }),
	});
}
