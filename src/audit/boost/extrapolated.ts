import { likelyOutside } from '../../fit/terms.ts';
import type { LogResults } from '../../log/results.ts';
import type { RecordedFigure, RecordedInPull } from '../../sheet/sheet.ts';

/** Readings that grow as absolute manifold pressure does; V of the meter less than that, for its flow rises faster. */
const growing = [
	'log.manifold_highest',
	'log.duty_peak',
	'log.pulse_peak',
	'log.across_fall',
	'log.across_drop',
	'log.pump_volts_loss',
	'log.meter_volts_peak',
	'log.boost_rise_late',
	'log.boost_fall_late',
	'log.knock_most',
	'log.knock_second',
	'log.slip',
] as const;

/** Air outside where a log does not have it: the coldest that is likely. The rise over it is then the greatest. */
const [coldest] = likelyOutside;

/**
 * A log in which one pull's readings are as they would be at another boost: each goes on as absolute manifold pressure does.
 * What does not move with that (lambda, advance, engine speed) stays.
 *
 * @param to Pa gauge
 * @param rail the rail's set point without flow at the boost that was logged, Pa gauge
 */
export function extrapolated(results: LogResults, pull: number, to: number, rail: number): LogResults {
	const figure = (id: string): number => {
		const value = (results[id] as RecordedFigure | undefined)?.value;
		return typeof value === 'number' ? value : Number.NaN;
	};
	const inPull = (id: string): number => {
		const value = listOf(results[id]).find(one => one.pull === pull)?.value;
		return typeof value === 'number' ? value : Number.NaN;
	};
	const ambient = figure('log.ambient_pressure');
	const peak = inPull('log.boost_peak');
	const ratio = (ambient + to) / (ambient + peak);
	const outside = Number.isNaN(figure('log.ambient_temp')) ? coldest : figure('log.ambient_temp');
	const more = (by: number) => (value: number) => value + (ratio - 1) * by;
	const boost = (value: number) => ratio * (ambient + value) - ambient;
	const hotter = (value: number) => outside + ((value - outside) * to) / peak;
	const moved = new Map<string, (value: number) => number>([
		...growing.map((id): [string, (value: number) => number] => [id, value => (value > 0 ? value * ratio : value)]),
		['log.boost_peak', boost],
		['log.boost_held', boost],
		['log.boost_end', boost],
		['log.charge_temp_end', hotter],
		['log.charge_temp_placed', hotter],
		['log.pump_volts_low', more(-Math.max(0, inPull('log.pump_volts_loss')))],
		['log.rail_held_low', value => more(-Math.max(0, rail - value))(value)],
	]);
	return Object.fromEntries(
		Object.entries(results).map(([id, entry]) => {
			const move = moved.get(id);
			if (!move) return [id, entry];
			return [
				id,
				listOf(entry).map(one =>
					one.pull === pull && typeof one.value === 'number' ? { ...one, value: move(one.value) } : one,
				),
			];
		}),
	);
}

const listOf = (entry: LogResults[string] | undefined): readonly RecordedInPull[] =>
	Array.isArray(entry) ? entry : [];
