import { lacking, plainly } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { inPull } from '../quantity.ts';

/** New readings a second of a channel in the pull; undefined where it is not logged. */
function rateOf(pull: PullView, channel: string): number | undefined {
	const [from, to] = pull.whole;
	const { length } = pull.in(channel).time;
	return length === 0 ? undefined : length / (to - from);
}

const rated = ['engine_speed', 'lambda_1', 'manifold_pressure', 'fuel_pressure'] as const;

export const slowest = inPull({
	id: 'log.rate_lowest',
	kind: 'ratio',
	unit: '1/s',
	formula:
		'new readings a second in the pull, of the slowest of engine speed, lambda, manifold pressure and rail as far as logged',
	measure: pull => {
		const rates = rated.flatMap(id => rateOf(pull, id) ?? []);
		return rates.length === 0 ? lacking('engine_speed') : plainly(Math.min(...rates));
	},
});

/** New readings a second below which a channel says nothing of a pull. */
const enough = 4;

/** Whether channels were read often enough to be judged: yes, else not known, so that a rule that asks cannot show. */
const quick = (id: string, words: string, ...channels: readonly string[]) =>
	inPull({
		id,
		kind: 'yes-no',
		formula: `yes where ${words} had 4 new readings a second in the pull; else not known`,
		measure: pull => {
			const slow = channels.filter(channel => !((rateOf(pull, channel) ?? 0) >= enough));
			return plainly(slow.length === 0 ? true : undefined, ...slow);
		},
	});

export const lambda = quick('log.lambda_quick', 'lambda', 'lambda_1');
export const manifold = quick('log.manifold_quick', 'manifold pressure', 'manifold_pressure');
export const rail = quick('log.rail_quick', 'the rail pressure', 'fuel_pressure');
export const meter = quick('log.meter_quick', 'the meter', 'meter_volts');
export const oil = quick('log.oil_quick', 'oil pressure', 'oil_pressure');
export const ratio = quick('log.gearing_quick', 'engine speed and road speed each', 'engine_speed', 'road_speed');
export const knock = quick('log.knock_quick', 'knock retard', 'knock_retard');
export const charge = quick('log.charge_quick', 'the charge temperature', 'charge_temp');
