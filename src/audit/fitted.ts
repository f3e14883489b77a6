import { readByFit } from '../fit/car-model.ts';
import { type Fit, fitCar } from '../fit/fit.ts';
import { fitLogOf } from '../fit/fit-log.ts';
import { finish, type Steps } from '../fit/steps.ts';
import { fnv1a } from '../graph/fnv.ts';
import type { State } from '../graph/solve.ts';
import { changedSince } from '../sheet/rests-on.ts';
import type { LogRecord, Sheet } from '../sheet/sheet.ts';
import { canonicalUnits } from '../units/kinds.ts';
import type { FitJson } from './audit.ts';
import type { Model } from './model.ts';
import { unitOf } from './quantity-values.ts';
import { uncertaintyOf } from './uncertainty.ts';

type Logged = Pick<LogRecord, 'name' | 'sha256' | 'points' | 'quantities'>;

/**
 * The logs of a sheet that still count: no answer that a fit reads has another value than then. What an engine is meant to do
 * (target, hot day) may be another by now: a fit goes by what the log says of it.
 */
export function countingLogs({ rulebook, graph }: Model, sheet: Sheet): readonly LogRecord[] {
	if (!sheet.logs?.length) return [];
	const read = readByFit(graph);
	return sheet.logs.filter(
		({ rests_on }) => !changedSince(rests_on, sheet, rulebook.questions).some(id => read.has(id)),
	);
}

/** A fit, and which of the logs are not in it. */
export interface Fitted {
	readonly fit: Fit;
	/** Logs that fit no car of these answers while the others do. */
	readonly leftOut: readonly { readonly log: string; readonly sha256: string; readonly look_at: readonly string[] }[];
}

/**
 * The model fitted to logs of the sheet's car; null where there is nothing at full load to fit to. Where all together fit no
 * car of these answers, those are left out that do not even alone. The same sheet, the same fit.
 */
export function* fitTo(model: Model, sheet: Sheet, state: State, records: readonly Logged[]): Steps<Fitted | null> {
	const fit = yield* fitTogether(model, sheet, state, records);
	if (!fit) return null;
	const whole = { fit, leftOut: [] };
	if (fit.applied || records.length === 1) return whole;
	const alone: { record: Logged; fit: Fit | null }[] = [];
	for (const record of records) alone.push({ record, fit: yield* fitTogether(model, sheet, state, [record]) });
	const bad = alone.filter(({ fit }) => fit && !fit.applied);
	const good = alone.filter(({ fit }) => fit?.applied);
	if (bad.length === 0 || good.length === 0) return whole;
	const rest =
		good.length === 1
			? good[0]!.fit
			: yield* fitTogether(
					model,
					sheet,
					state,
					good.map(({ record }) => record),
				);
	if (!rest?.applied) return whole;
	return {
		fit: rest,
		leftOut: bad.map(({ record, fit }) => ({
			log: record.name,
			sha256: record.sha256,
			look_at: fit!.misfit?.look_at ?? [],
		})),
	};
}

function* fitTogether(model: Model, sheet: Sheet, state: State, records: readonly Logged[]): Steps<Fit | null> {
	const { rulebook, quantities } = model;
	const logs = records.flatMap(record => fitLogOf(record, 1 / records.length) ?? []);
	if (logs.length === 0) return null;
	// Nobody measures a target, nor the hottest day to come.
	const measured = new Set(
		rulebook.questions.flatMap(({ id, target }) => (target || id === 'build.hot_day' ? [] : [id])),
	);
	const uncertain = uncertaintyOf(model, sheet, state);
	return yield* fitCar(state, uncertain, logs, {
		declared: rulebook.episodes!,
		limits: quantities.flatMap(({ id }) => (id in rulebook.limits ? [id] : [])),
		canMeasure: id => measured.has(id),
		seed: fnv1a(JSON.stringify([sheet.answers, logs.map(({ points }) => points)])),
	});
}

type FittedOf = Fitted & { readonly days: readonly string[] };

/** By model the last fit and what it was made from: an audit is looked at more often than its answers change. */
const lastFit = new WeakMap<Model, { readonly from: string; readonly fitted: FittedOf | null }>();

/**
 * The model fitted to the logs that a sheet keeps and that still count, with their days; null without one.
 *
 * @param state the sheet solved, without any fit
 */
export const fitOf = (model: Model, sheet: Sheet, state: State): FittedOf | null =>
	finish(fitInSteps(model, sheet, state));

/** The same, step by step: each yields the share that is done. Made before, it takes no step. */
export function* fitInSteps(model: Model, sheet: Sheet, state: State): Steps<FittedOf | null> {
	if (!sheet.logs?.length) return null;
	const from = madeFrom(sheet);
	const last = lastFit.get(model);
	if (last?.from === from) return last.fitted;
	const fitted = yield* fittedTo(model, sheet, state);
	lastFit.set(model, { from, fitted });
	return fitted;
}

/** Whether an audit of a sheet has to make a fit first, which takes seconds. */
export const fitsFirst = (model: Model, sheet: Sheet): boolean =>
	countingLogs(model, sheet).some(log => fitLogOf(log) !== null) && lastFit.get(model)?.from !== madeFrom(sheet);

const madeFrom = ({ answers, logs }: Sheet): string => JSON.stringify([answers, logs]);

function* fittedTo(model: Model, sheet: Sheet, state: State): Steps<FittedOf | null> {
	const records = countingLogs(model, sheet);
	const fitted = records.length === 0 ? null : yield* fitTo(model, sheet, state, records);
	if (!fitted) return null;
	const out = new Set(fitted.leftOut.map(({ sha256 }) => sha256));
	return {
		...fitted,
		days: [...new Set(records.filter(({ sha256 }) => !out.has(sha256)).map(({ date }) => date))].sort(),
	};
}

/** Units of what a sensor is off, where that is no share. */
const ofSensors: Readonly<Record<string, string>> = {
	'sensor: charge_temp': 'K',
	'sensor: ambient_temp': 'K',
	'sensor: fuel_pressure': 'Pa',
};

/** A fit as other programs read it, each figure with its unit. */
export function fitJson({ rulebook, quantities }: Model, { fit, leftOut }: Fitted): FitJson {
	const units = new Map<string, string | null>([
		...rulebook.questions.map(({ id, kind }): [string, string] => [
			id,
			canonicalUnits[kind as keyof typeof canonicalUnits] || '1',
		]),
		...quantities.map((quantity): [string, string | null] => [quantity.id, unitOf(quantity)]),
	]);
	return {
		applied: fit.applied,
		effective: fit.effective,
		moved: fit.moved.map(one => ({
			id: one.id,
			unit: units.get(one.id) ?? ofSensors[one.id] ?? '1',
			before: one.before,
			after: one.after,
		})),
		unsettled: fit.unsettled,
		misfit: fit.misfit,
		detects: fit.detects.map(one => ({ ...one, unit: ofSensors[one.id] ?? '1' })),
		left_out: leftOut.map(({ log, look_at }) => ({ log, look_at })),
	};
}
