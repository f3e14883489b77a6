import { oilFloor } from '../pull/oil.ts';
import { runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import { filtered } from '../series.ts';
import { heldAtEach } from '../ticks.ts';
import { heldFor } from './held-for.ts';
import { medianOf } from './median-of.ts';
import { aboveIdle, whileOver } from './while-over.ts';

export const oilAt3000 = runQuantity({
	id: 'log.oil_pressure_at_3000',
	kind: 'pressure',
	sensor: 'oil_pressure',
	formula: 'median oil pressure from 2800 to 3200 rpm, warm',
	accumulator: () =>
		medianOf(
			chunk => {
				const readings = whileOver(chunk, 'oil_pressure', 2800, true);
				const speed = heldAtEach(chunk.of('engine_speed'), readings.time, 2.5);
				return [filtered(readings, index => speed[index]! <= 3200)];
			},
			sensorErrors.pressure,
			['oil_pressure', 'coolant_temp'],
		),
});

export const oilOverFloor = runQuantity({
	id: 'log.oil_over_floor_warm',
	kind: 'pressure',
	sensor: 'oil_pressure',
	range: [null, null],
	source: ['practice'],
	formula:
		'the least, held for 0.3 s and three readings over 1300 rpm, warm, of oil pressure less the lower of 10 psi per 1000 rpm and 45 psi',
	accumulator: () =>
		heldFor(
			0.3,
			3,
			chunk => {
				const readings = whileOver(chunk, 'oil_pressure', aboveIdle, true);
				const speed = heldAtEach(chunk.of('engine_speed'), readings.time, 2.5);
				return { time: readings.time, value: readings.value.map((one, index) => one - oilFloor(speed[index]!)) };
			},
			sensorErrors.pressure,
			['oil_pressure', 'coolant_temp'],
			-1,
		),
});
