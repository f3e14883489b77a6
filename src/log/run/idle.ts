import { during } from '../chunk.ts';
import { lacking, measured } from '../measured.ts';
import { runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import { timedPercentiles } from '../statistics.ts';
import { medianOf } from './median-of.ts';

const whenIdle = (channel: string, error: (typeof sensorErrors)[keyof typeof sensorErrors]) => () =>
	medianOf(chunk => during(chunk, 'idle', channel, true), error, [channel, 'coolant_temp']);

export const speed = runQuantity({
	id: 'log.idle_speed',
	kind: 'rotation',
	formula: 'median engine speed at idle, warm',
	accumulator: whenIdle('engine_speed', sensorErrors.none),
});

export const meter = runQuantity({
	id: 'log.idle_meter_volts',
	kind: 'voltage',
	sensor: 'meter_volts',
	formula: 'median volts of the meter at idle, warm',
	accumulator: whenIdle('meter_volts', sensorErrors.volts),
});

export const rail = runQuantity({
	id: 'log.idle_fuel_pressure',
	kind: 'pressure',
	sensor: 'fuel_pressure',
	formula: 'median rail pressure at idle, warm',
	accumulator: whenIdle('fuel_pressure', sensorErrors.pressure),
});

export const oil = runQuantity({
	id: 'log.idle_oil_pressure',
	kind: 'pressure',
	sensor: 'oil_pressure',
	formula: 'median oil pressure at idle, warm',
	accumulator: whenIdle('oil_pressure', sensorErrors.pressure),
});

export const volts = runQuantity({
	id: 'log.idle_volts',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'median battery volts at idle, warm',
	accumulator: whenIdle('battery_volts', sensorErrors.volts),
});

export const manifold = runQuantity({
	id: 'log.idle_pressure',
	kind: 'absolute-pressure',
	sensor: 'manifold_pressure',
	unit: 'Pa',
	formula: 'median manifold pressure at idle, warm',
	accumulator: whenIdle('manifold_pressure', sensorErrors.manifold),
});

export const throttle = runQuantity({
	id: 'log.throttle_volts_closed',
	kind: 'voltage',
	sensor: 'throttle_volts',
	formula: 'median volts of the throttle sensor at idle, warm or not',
	accumulator: () => medianOf(chunk => during(chunk, 'idle', 'throttle_volts'), sensorErrors.volts, ['throttle_volts']),
});

/** s; a reading counts for no more time than this. */
const maxHold = 5;

/** rpm between the 5th and 95th percentile of the time at each engine speed, of the warm idle with that rank by it. */
const swing = (id: string, rank: number, formula: string) =>
	runQuantity({
		id,
		kind: 'rotation',
		formula,
		accumulator() {
			const swings: number[] = [];
			return {
				take(chunk) {
					for (const readings of during(chunk, 'idle', 'engine_speed', true)) {
						if (readings.value.length < 5) continue;
						const [low, high] = timedPercentiles(readings, [0.05, 0.95], maxHold);
						swings.push(high! - low!);
						swings.sort((a, b) => b - a);
						swings.length = Math.min(swings.length, 2);
					}
				},
				result: () => (swings.length < rank ? lacking('engine_speed', 'coolant_temp') : measured(swings[rank - 1])),
			};
		},
	});

export const worst = swing(
	'log.idle_swing',
	1,
	'95th less 5th percentile of the time at each engine speed, of the idle, warm, where it is most',
);
export const second = swing('log.idle_swing_second', 2, 'the same of the second worst idle: one idle decides nothing');
