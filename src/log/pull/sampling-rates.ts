import { exactly, lacking } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { pullQuantity } from '../quantity.ts';

/** New readings a second of a channel in the pull; undefined where it is not logged. */
function rateOf(pull: PullView, channel: string): number | undefined {
	const [from, to] = pull.whole;
	const { length } = pull.in(channel).time;
	return length === 0 ? undefined : length / (to - from);
}

const rateChannels = ['engine_speed', 'lambda_1', 'manifold_pressure', 'fuel_pressure'] as const;

export const slowest = pullQuantity({
	id: 'log.rate_lowest',
	kind: 'ratio',
	unit: '1/s',
	formula:
		'new readings a second in the pull, of the slowest of engine speed, lambda, manifold pressure and rail as far as logged',
	measure: pull => {
		const rates = rateChannels.flatMap(id => rateOf(pull, id) ?? []);
		return rates.length === 0 ? lacking('engine_speed') : exactly(Math.min(...rates));
	},
});

/** New readings a second that a channel needs to be judged in a pull. */
const minRate = 4;

/** Whether channels were read often enough to be judged: yes, else not known, so that a rule that asks cannot tell. */
const sampled = (id: string, words: string, ...channels: readonly string[]) =>
	pullQuantity({
		id,
		kind: 'yes-no',
		formula: `yes where ${words} had 4 new readings a second in the pull; else not known`,
		measure: pull => {
			const slow = channels.filter(channel => !((rateOf(pull, channel) ?? 0) >= minRate));
			return exactly(slow.length === 0 ? true : undefined, ...slow);
		},
	});

export const lambda = sampled('log.lambda_quick', 'lambda', 'lambda_1');
export const manifold = sampled('log.manifold_quick', 'manifold pressure', 'manifold_pressure');
export const rail = sampled('log.rail_quick', 'the rail pressure', 'fuel_pressure');
export const meter = sampled('log.meter_quick', 'the meter', 'meter_volts');
export const oil = sampled('log.oil_quick', 'oil pressure', 'oil_pressure');
export const ratio = sampled('log.gearing_quick', 'engine speed and road speed each', 'engine_speed', 'road_speed');
export const knock = sampled('log.knock_quick', 'knock retard', 'knock_retard');
export const charge = sampled('log.charge_quick', 'the charge temperature', 'charge_temp');
