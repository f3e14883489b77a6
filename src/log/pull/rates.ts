import { lacking, plainly } from '../measured.ts';
import { inPull } from '../quantity.ts';

const rated = ['engine_speed', 'lambda_1', 'manifold_pressure', 'fuel_pressure'] as const;

export const slowest = inPull({
	id: 'log.rate_lowest',
	kind: 'ratio',
	unit: '1/s',
	formula:
		'new readings a second in the pull, of the slowest of engine speed, lambda, manifold pressure and rail as far as logged',
	measure: pull => {
		const [from, to] = pull.whole;
		const rates = rated.filter(id => pull.of(id).time.length > 0).map(id => pull.in(id).time.length / (to - from));
		return rates.length === 0 ? lacking('engine_speed') : plainly(Math.min(...rates));
	},
});

/** The rates that rules ask for, one a channel. */
const rateOf = (id: string, name: string, channel: string) =>
	inPull({
		id,
		kind: 'ratio',
		unit: '1/s',
		formula: `new readings of ${name} a second in the pull`,
		measure: pull => {
			const [from, to] = pull.whole;
			const { length } = pull.in(channel).time;
			return length === 0 ? lacking(channel) : plainly(length / (to - from));
		},
	});

export const lambda = rateOf('log.lambda_rate', 'lambda', 'lambda_1');
export const manifold = rateOf('log.manifold_rate', 'manifold pressure', 'manifold_pressure');
export const rail = rateOf('log.rail_rate', 'the rail pressure', 'fuel_pressure');
export const meter = rateOf('log.meter_rate', 'the meter', 'meter_volts');
export const oil = rateOf('log.oil_rate', 'oil pressure', 'oil_pressure');
export const road = rateOf('log.road_speed_rate', 'road speed', 'road_speed');
export const speed = rateOf('log.speed_rate', 'engine speed', 'engine_speed');
export const knock = rateOf('log.knock_rate', 'knock retard', 'knock_retard');
