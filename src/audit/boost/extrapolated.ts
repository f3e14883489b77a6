import { likelyAmbient } from '../../fit/terms.ts';
import type { LogResults } from '../../log/results.ts';
import { figureInPull, figureOf, figuresByPull } from './logged-figures.ts';

/** Readings in proportion to absolute manifold pressure; V of the meter rise less than that, as its flow rises faster. */
const proportional = [
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

/** K of the air outside where a log does not have it: the coldest that is likely. The charge's rise over it is then greatest. */
const [coldest] = likelyAmbient;

/**
 * A log in which one pull's readings are extrapolated to another boost, in proportion to absolute manifold pressure.
 * What does not move with that (lambda, advance, engine speed) stays.
 *
 * @param to Pa gauge
 * @param rail the rail's set point without flow at the boost that was logged, Pa gauge
 */
export function extrapolated(results: LogResults, pull: number, to: number, rail: number): LogResults {
	const inPull = (id: string) => figureInPull(results, id, pull);
	const ambient = figureOf(results, 'log.ambient_pressure');
	const logged = figureOf(results, 'log.ambient_temp');
	const peak = inPull('log.boost_peak');
	const ratio = (ambient + to) / (ambient + peak);
	const outside = Number.isNaN(logged) ? coldest : logged;
	const grownBy = (by: number) => (value: number) => value + (ratio - 1) * by;
	const boost = (value: number) => ratio * (ambient + value) - ambient;
	const hotter = (value: number) => outside + ((value - outside) * to) / peak;
	const moved = new Map<string, (value: number) => number>([
		...proportional.map((id): [string, (value: number) => number] => [
			id,
			value => (value > 0 ? value * ratio : value),
		]),
		['log.boost_peak', boost],
		['log.boost_held', boost],
		['log.boost_end', boost],
		['log.charge_temp_end', hotter],
		['log.charge_temp_placed', hotter],
		['log.pump_volts_low', grownBy(-Math.max(0, inPull('log.pump_volts_loss')))],
		['log.rail_held_low', value => grownBy(-Math.max(0, rail - value))(value)],
	]);
	return Object.fromEntries(
		Object.entries(results).map(([id, entry]) => {
			const move = moved.get(id);
			if (!move) return [id, entry];
			return [
				id,
				figuresByPull(results, id).map(one =>
					one.pull === pull && typeof one.value === 'number' ? { ...one, value: move(one.value) } : one,
				),
			];
		}),
	);
}
