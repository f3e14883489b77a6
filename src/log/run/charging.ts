import { runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import { heldFor } from './held-for.ts';
import { medianOf } from './median-of.ts';
import { aboveIdle, whileOver } from './while-over.ts';

export const charging = runQuantity({
	id: 'log.charging_volts',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'median battery volts over 1300 rpm, warm or not',
	accumulator: () =>
		medianOf(chunk => [whileOver(chunk, 'battery_volts', aboveIdle)], sensorErrors.volts, ['battery_volts']),
});

export const chargingLow = runQuantity({
	id: 'log.charging_volts_low',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'the volts that the battery stayed at or under for 60 s over 1300 rpm, by medians of 5 s; the lowest such',
	accumulator: () =>
		heldFor(60, 10, chunk => whileOver(chunk, 'battery_volts', aboveIdle), sensorErrors.volts, ['battery_volts'], -1),
});

export const chargingHigh = runQuantity({
	id: 'log.charging_volts_high',
	kind: 'voltage',
	sensor: 'supply_volts',
	formula: 'the most battery volts that were held for 10 s of running',
	accumulator: () =>
		heldFor(10, 5, chunk => whileOver(chunk, 'battery_volts', chunk.declared.running.speed), sensorErrors.volts, [
			'battery_volts',
		]),
});
