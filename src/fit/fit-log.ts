import type { LogRecord, RecordedFigure, RecordedInPull } from '../sheet/sheet.ts';

/** A reading in one bin of engine speed: its median, and the standard deviation of that. */
export interface Reading {
	readonly value: number;
	readonly deviation: number;
}

/** What was read at full load at one engine speed, rpm, by channel. */
export interface FitPoint {
	readonly pull: number;
	readonly speed: number;
	readonly read: Readonly<Record<string, Reading>>;
}

/** What the model is fitted to of one log. */
export interface FitLog {
	/** Of the air outside: Pa abs; K, null where it is not logged. */
	readonly ambient: number;
	readonly outside: number | null;
	readonly points: readonly FitPoint[];
	/** Warm idle: rail, Pa gauge, and manifold, Pa abs. */
	readonly idle: { readonly rail: number; readonly manifold: number } | null;
	/** By pull: W at the wheels' end worked back to the engine. */
	readonly power: ReadonlyMap<number, number>;
	/** Pulls in which the clutch did not slip, the spark did not stumble, knock was listened for and not heard. */
	readonly held: Readonly<Record<Fact, readonly number[]>>;
}

/** What a log shows without a number: no slip of the clutch, no stumble of the spark, no knock. */
export const facts = ['clutch', 'spark', 'knock'] as const;
export type Fact = (typeof facts)[number];

/** Most points of a pull and of all logs: more add little, and each costs time. */
const [maxOfPull, maxOfAll] = [12, 24] as const;
/** Standard error of a median over that of a mean, of normal readings: sqrt(pi / 2). */
const medianErrorFactor = 1.2533;
/** Share of slip under which a clutch holds. */
const maxSlip = 0.02;

/** What a log, judged, gives to fit to; null without a single point at full load. `share`: of the points of all logs. */
export function fitLogOf(
	{ points: pulls, quantities: results }: Pick<LogRecord, 'points' | 'quantities'>,
	share = 1,
): FitLog | null {
	const figure = (id: string) => {
		const value = (results[id] as RecordedFigure | undefined)?.value;
		return typeof value === 'number' ? value : null;
	};
	const ambient = figure('log.ambient_pressure');
	const some = pulls.filter(({ points }) => points.length > 0).slice(-10);
	if (some.length === 0 || ambient === null) return null;
	const each = Math.max(2, Math.min(maxOfPull, Math.floor((maxOfAll * share) / some.length)));
	const inPull = (id: string) => (results[id] ?? []) as readonly RecordedInPull[];
	const pullsWhere = (id: string, holds: (value: number) => boolean) =>
		inPull(id).flatMap(({ pull, value }) => (typeof value === 'number' && holds(value) ? [pull] : []));
	const listened = (results['log.knock_proved'] as RecordedFigure | undefined)?.value === true;
	const [rail, manifold] = [figure('log.idle_fuel_pressure'), figure('log.idle_pressure')];
	return {
		ambient,
		outside: figure('log.ambient_temp'),
		points: some.flatMap(({ pull, points }) =>
			spread(points, each).map(({ speed, channels }) => ({
				pull,
				speed,
				read: Object.fromEntries(
					Object.entries(channels).map(([id, [value, noise, count]]) => [
						id,
						{ value, deviation: (medianErrorFactor * noise) / Math.sqrt(Math.max(1, count)) },
					]),
				),
			})),
		),
		idle: rail === null || manifold === null ? null : { rail, manifold },
		power: new Map(
			inPull('log.power').flatMap(({ pull, value }) => (typeof value === 'number' ? [[pull, value]] : [])),
		),
		held: {
			clutch: pullsWhere('log.slip', slip => slip < maxSlip),
			spark: pullsWhere('log.stumbles', count => count === 0),
			// A knock channel that never moved proves nothing where no knock sensor is known to be fitted.
			knock: listened ? pullsWhere('log.knock_most', retard => retard <= 0) : [],
		},
	};
}

/** So many of a list at most, evenly from its first to its last. */
function spread<T>(list: readonly T[], count: number): T[] {
	if (list.length <= count) return [...list];
	return Array.from({ length: count }, (_, at) => list[Math.round((at * (list.length - 1)) / (count - 1))]!);
}
