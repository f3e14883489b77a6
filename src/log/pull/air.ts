import { airGasConstant } from '../../physics/constants.ts';
import { type AirMeter, meterFlow } from '../../physics/meter.ts';
import { numberOf } from '../car.ts';
import { exactly, lacking, measured } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { pullQuantity } from '../quantity.ts';
import { voltsError } from '../sensor-errors.ts';
import { heldAt, mapped, type Readings } from '../series.ts';
import { highest, timeAtTop } from '../statistics.ts';
import { mediansBySpeed } from './readings.ts';

export const meterPeak = pullQuantity({
	id: 'log.meter_volts_peak',
	kind: 'voltage',
	sensor: 'meter_volts',
	worst: 'highest',
	formula: 'highest running median of three readings of the meter',
	measure: pull => {
		const value = highest(pull.in('meter_volts'))?.value;
		return measured(value, voltsError(pull.declared, value ?? 0), ['meter_volts']);
	},
});

export const meterFlat = pullQuantity({
	id: 'log.meter_flat_time',
	kind: 'time',
	formula: 'longest time at the highest reading of the meter',
	measure: pull => {
		const volts = pull.in('meter_volts');
		return volts.time.length < 3 ? lacking('meter_volts') : measured(timeAtTop(volts, Math.max(...volts.value)));
	},
});

export const meterFlatSpeed = pullQuantity({
	id: 'log.meter_flat_speed',
	kind: 'rotation',
	formula: 'the most that engine speed rose while the meter stood at its highest reading',
	measure: pull => {
		const volts = pull.in('meter_volts');
		if (volts.time.length < 3) return lacking('meter_volts');
		const top = Math.max(...volts.value);
		let [from, most] = [Number.NaN, 0];
		for (const [index, value] of volts.value.entries()) {
			const speed = pull.speedAt(volts.time[index]!);
			if (value < top - 1e-9) from = Number.NaN;
			else if (Number.isNaN(from)) from = speed;
			else most = Math.max(most, speed - from);
		}
		return measured(most);
	},
});

/** Air through the meter, kg/s: its volts through the sheet's curve, else as logged; null where neither is there. */
export function airOf(pull: Pick<PullView, 'car' | 'of'>): { air: Readings; from: 'meter' | 'flow' } | null {
	const volts = pull.of('meter_volts');
	const meter = pull.car.value('sensors.meter') as AirMeter | undefined | null;
	if (volts.time.length > 0 && meter) {
		const [top, ceiling] = [numberOf(pull.car, 'sensors.meter_top_volts'), numberOf(pull.car, 'sensors.meter_ceiling')];
		const scaler = top !== undefined && ceiling !== undefined ? top / ceiling : 1;
		return { air: mapped(volts, at => meterFlow(meter, Math.max(0, at * scaler)).value), from: 'meter' };
	}
	const flow = pull.of('air_flow');
	return flow.time.length > 0 ? { air: flow, from: 'flow' } : null;
}

export const filling = pullQuantity({
	id: 'log.ve_at',
	kind: 'list',
	source: ['heywood'],
	formula:
		'a list of [rpm, volumetric efficiency] every 500 rpm: air flow / (manifold density x displacement x rpm / 120), the median within 250 rpm, at full',
	measure: pull => {
		const displacement = numberOf(pull.car, 'engine.displacement');
		if (displacement === undefined) return lacking('engine.displacement');
		const found = airOf({ car: pull.car, of: id => pull.in(id) });
		const lacks = [
			found ? '' : 'air_flow',
			...['manifold_pressure', 'charge_temp'].filter(id => pull.of(id).time.length === 0),
		].filter(Boolean);
		if (!found || lacks.length > 0 || !pull.full) return lacking(...lacks);
		const [from, to] = pull.full;
		const points: [number, number][] = [];
		for (const [index, time] of found.air.time.entries()) {
			if (time < from || time > to) continue;
			const speed = pull.speedAt(time);
			const density =
				heldAt(pull.of('manifold_pressure'), time) / (airGasConstant * heldAt(pull.of('charge_temp'), time));
			const efficiency = (found.air.value[index]! * 120) / (density * displacement * speed);
			if (Number.isFinite(efficiency)) points.push([speed, efficiency]);
		}
		return exactly(mediansBySpeed(points), 'air_flow');
	},
});
