import { lacking, measured } from '../measured.ts';
import { pullQuantity } from '../quantity.ts';
import { atEnd, medianAround } from './readings.ts';

export const chargeEnd = pullQuantity({
	id: 'log.charge_temp_end',
	kind: 'temperature',
	sensor: 'charge_temp',
	formula: 'median charge temperature of the last 0.3 s of the pull',
	measure: pull => atEnd(pull.in('charge_temp'), 0.3, pull.declared.sensor_error.temperature, 'charge_temp'),
});

export const chargeRise = pullQuantity({
	id: 'log.charge_temp_rise',
	kind: 'temperature-difference',
	range: [null, null],
	formula: 'charge temperature at the end less that at the first demand',
	measure: pull => {
		const charge = pull.of('charge_temp');
		const [from, to] = pull.whole;
		const [before, after] = [medianAround(charge, from, 1), medianAround(charge, to, 1)];
		if (before === undefined || after === undefined) return lacking('charge_temp');
		return measured(after - before, 0.5);
	},
});

export const chargePlaced = pullQuantity({
	id: 'log.charge_temp_placed',
	kind: 'temperature',
	sensor: 'charge_temp',
	formula: 'the charge temperature at the end, where the sheet has the sensor after the intercooler; else not known',
	measure: pull =>
		pull.car.value('sensors.air_temp_place') === 'after-intercooler'
			? chargeEnd.measure(pull)
			: lacking('sensors.air_temp_place'),
});
