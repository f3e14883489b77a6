import { numberOf } from './car.ts';
import type { PullView } from './pull.ts';
import { drivenTime } from './pulse-form.ts';
import { within } from './series.ts';
import { deviationFromMad, median } from './statistics.ts';

/** Channels of which a pull's points have a value. */
const pointChannels = [
	'manifold_pressure',
	'boost',
	'lambda_1',
	'lambda_2',
	'lambda_target',
	'charge_temp',
	'injector_pulse',
	'injector_duty',
	'meter_volts',
	'air_flow',
	'fuel_pressure',
	'pump_volts',
	'battery_volts',
	'knock_retard',
	'spark_advance',
	'oil_pressure',
	'coolant_temp',
] as const;

/** What a pull showed at one engine speed. */
export interface PullPoint {
	/** rpm, the middle of the bin. */
	readonly speed: number;
	/** s from the first row, the middle of the time spent in it. */
	readonly time: number;
	readonly full: boolean;
	/** By channel: the median, the standard deviation of one reading about the line of the pull, and how many there were. */
	readonly channels: Readonly<
		Record<string, { readonly value: number; readonly noise: number; readonly count: number }>
	>;
}

/** A pull by engine speed. */
export interface PullPoints {
	readonly pull: number;
	readonly gear: number | null;
	readonly points: readonly PullPoint[];
}

/** rpm of a bin. */
const bin = 100;

/** A pull by engine speed, in bins of 100 rpm, lambda moved by its lag. */
export function pointsOf(pull: PullView): PullPoints {
	const { time, value: speed } = pull.in('engine_speed');
	const edges: { low: number; from: number; to: number }[] = [];
	let top = Number.NEGATIVE_INFINITY;
	for (const [index, at] of time.entries()) {
		// Engine speed as it rises: a reading under an earlier one belongs to the current bin.
		top = Math.max(top, speed[index]!);
		const low = Math.floor(top / bin) * bin;
		const last = edges.at(-1);
		if (last?.low === low) last.to = at;
		else {
			if (last) last.to = at;
			edges.push({ low, from: at, to: at });
		}
	}
	const noises = Object.fromEntries(pointChannels.map(id => [id, noiseOf(pull.in(id).value)]));
	return {
		pull: pull.episode.number!,
		gear: pull.episode.gear,
		points: edges.map(({ low, from, to }) => ({
			speed: low + bin / 2,
			time: (from + to) / 2,
			full: pull.full !== undefined && from >= pull.full[0] && to <= pull.full[1] + 1e-6,
			channels: Object.fromEntries(
				pointChannels.flatMap(id => {
					const late = id.startsWith('lambda_') && id !== 'lambda_target' ? (pull.lag ?? 0) : 0;
					const { value } = within(pull.of(id), from + late, to + late - 1e-6);
					if (value.length === 0) return [];
					const middle = median(value);
					const read =
						id === 'injector_pulse'
							? drivenTime(pull.pulse, middle, numberOf(pull.car, 'injectors.dead_time') ?? Number.NaN)
							: middle;
					return Number.isNaN(read) ? [] : [[id, { value: read, noise: noises[id]!, count: value.length }]];
				}),
			),
		})),
	};
}

/** Standard deviation of one reading from second differences, which a steady rise leaves out: sd(d2) / sqrt(6), robustly. */
function noiseOf(values: Float64Array): number {
	const second: number[] = [];
	for (let index = 2; index < values.length; index++)
		second.push(Math.abs(values[index]! - 2 * values[index - 1]! + values[index - 2]!));
	return second.length < 3 ? 0 : (deviationFromMad * median(second)) / Math.sqrt(6);
}
