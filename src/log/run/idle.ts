import { during } from '../chunk.ts';
import { lacking, measured } from '../measured.ts';
import { inRun } from '../quantity.ts';
import { timedPercentiles } from '../statistics.ts';
import { errors, medianOf } from './tools.ts';

const whenIdle = (channel: string, error: (typeof errors)[keyof typeof errors]) => () =>
	medianOf(chunk => during(chunk, 'idle', channel, true), error, [channel, 'coolant_temp']);

export const speed = inRun({
	id: 'log.idle_speed',
	kind: 'rotation',
	formula: 'median engine speed at idle, warm',
	gather: whenIdle('engine_speed', errors.none),
});

export const meter = inRun({
	id: 'log.idle_meter_volts',
	kind: 'voltage',
	sensor: 'meter_volts',
	formula: 'median volts of the meter at idle, warm',
	gather: whenIdle('meter_volts', errors.volts),
});

export const rail = inRun({
	id: 'log.idle_fuel_pressure',
	kind: 'pressure',
	sensor: 'fuel_pressure',
	formula: 'median rail pressure at idle, warm',
	gather: whenIdle('fuel_pressure', errors.pressure),
});

export const oil = inRun({
	id: 'log.idle_oil_pressure',
	kind: 'pressure',
	sensor: 'oil_pressure',
	formula: 'median oil pressure at idle, warm',
	gather: whenIdle('oil_pressure', errors.pressure),
});

export const volts = inRun({
	id: 'log.idle_volts',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'median battery volts at idle, warm',
	gather: whenIdle('battery_volts', errors.volts),
});

export const manifold = inRun({
	id: 'log.idle_pressure',
	kind: 'absolute-pressure',
	sensor: 'manifold_pressure',
	unit: 'Pa',
	formula: 'median manifold pressure at idle, warm',
	gather: whenIdle('manifold_pressure', errors.manifold),
});

export const throttle = inRun({
	id: 'log.throttle_volts_closed',
	kind: 'voltage',
	sensor: 'throttle_volts',
	formula: 'median volts of the throttle sensor at idle, warm or not',
	gather: () => medianOf(chunk => during(chunk, 'idle', 'throttle_volts'), errors.volts, ['throttle_volts']),
});

/** s that a reading stands at the longest. */
const longest = 5;

/** The swing of the nth worst warm idle: 95th less 5th percentile of the time at each engine speed. */
const swing = (id: string, rank: number, formula: string) =>
	inRun({
		id,
		kind: 'rotation',
		formula,
		gather() {
			const swings: number[] = [];
			return {
				take(chunk) {
					for (const readings of during(chunk, 'idle', 'engine_speed', true)) {
						if (readings.value.length < 5) continue;
						const [low, high] = timedPercentiles(readings, [0.05, 0.95], longest);
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
