import { cycleTime } from '../../physics/injector.ts';
import { percent } from '../../quantities/quantity.ts';
import { numberOf } from '../car.ts';
import { lacking, type Measured, measured } from '../measured.ts';
import type { PullView } from '../pull.ts';
import { drivenTime, openTime } from '../pulse-form.ts';
import { pullQuantity } from '../quantity.ts';
import { voltsDifferenceError, voltsError } from '../sensor-errors.ts';
import { known, mapped, type Readings, within } from '../series.ts';
import { lowest, median } from '../statistics.ts';
import { boostAt } from './boost.ts';
import { atEnd, heldHigh, heldLow, inFull } from './readings.ts';

/** Injector duty, as logged, else from the pulse and engine speed. */
function dutyOf(pull: PullView): Readings {
	const logged = pull.in('injector_duty');
	if (logged.time.length > 0) return logged;
	const deadTime = pull.pulse.dead ? 0 : numberOf(pull.car, 'injectors.dead_time');
	return mapped(
		pull.in('injector_pulse'),
		(pulse, time) => drivenTime(pull.pulse, pulse, deadTime ?? Number.NaN) / cycleTime(Math.max(1, pull.speedAt(time))),
	);
}

export const duty = pullQuantity({
	id: 'log.duty_peak',
	kind: 'ratio',
	sensor: 'injector_pulse',
	worst: 'highest',
	shown: percent,
	formula:
		'the most injector duty that was held for 0.3 s and three readings; of the pulse and rpm where no duty is logged',
	measure: pull => {
		const value = heldHigh(pull, dutyOf(pull));
		return measured(value, (value ?? 0) * pull.declared.sensor_error.pulse, ['injector_pulse']);
	},
});

export const pulse = pullQuantity({
	id: 'log.pulse_peak',
	kind: 'time',
	sensor: 'injector_pulse',
	formula: 'the longest injector pulse that was held for 0.3 s and three readings',
	measure: pull => {
		const value = heldHigh(pull, pull.in('injector_pulse'));
		return measured(value, (value ?? 0) * pull.declared.sensor_error.pulse, ['injector_pulse']);
	},
});

/** Rail less boost, Pa, at each reading of the rail; undefined where boost is not known. */
function acrossOf(pull: PullView, rail: Readings): Readings | undefined {
	const boosts = Array.from(rail.time, time => boostAt(pull, time));
	if (boosts.some(boost => boost === undefined)) return undefined;
	return mapped(rail, (pressure, time) => pressure - boostAt(pull, time)!);
}

/** Measures the pressure across the injectors at full: of the rail and, boosted, the boost. */
function ofAcross(pull: PullView, measure: (across: Readings) => Measured): Measured {
	return inFull(pull, 'fuel_pressure', rail => {
		const across = acrossOf(pull, rail);
		return across ? measure(across) : lacking('manifold_pressure');
	});
}

export const drop = pullQuantity({
	id: 'log.across_drop',
	kind: 'pressure',
	range: [null, null],
	nature: 'estimate',
	source: ['orifice'],
	formula:
		"the sheet's rail pressure under flow at the pump volts and boost logged, less that boost; less rail minus boost as logged; the last 0.3 s, a fall is positive",
	measure: pull =>
		ofAcross(pull, across => {
			const now = atEnd(across, 0.3, pull.declared.sensor_error.pressure, 'fuel_pressure');
			const at = across.time.at(-1)!;
			const boost = boostAt(pull, at)!;
			const volts = median(within(pull.of('pump_volts'), at - 0.5, at).value);
			const expected = pull.car.at('fuel.rail_pressure_under_flow', {
				...(pull.boosted ? { 'boost.target': boost } : {}),
				...(Number.isFinite(volts) ? { 'fuel.pump_voltage': volts } : {}),
			});
			if (typeof expected !== 'number' || typeof now.value !== 'number')
				return lacking('fuel.rail_pressure_under_flow');
			return measured(expected - boost - now.value, pull.declared.sensor_error.pressure);
		}),
});

export const fall = pullQuantity({
	id: 'log.across_fall',
	kind: 'pressure',
	range: [null, null],
	formula:
		'median pressure across the injectors in the first second at full less the lowest held for 0.3 s and three readings',
	measure: pull =>
		ofAcross(pull, across => {
			const first = within(across, across.time[0]!, across.time[0]! + 1).value;
			const least = heldLow(pull, across);
			// One sensor against itself: only its noise is left.
			return first.length < 3 || least === undefined
				? lacking('fuel_pressure')
				: measured(median(first) - least, 0.2 * pull.declared.sensor_error.pressure);
		}),
});

export const railLowest = pullQuantity({
	id: 'log.rail_lowest',
	kind: 'pressure',
	sensor: 'fuel_pressure',
	formula: 'lowest running median of three readings of the rail at full',
	measure: pull =>
		inFull(pull, 'fuel_pressure', rail =>
			measured(lowest(rail)?.value, pull.declared.sensor_error.pressure, ['fuel_pressure']),
		),
});

export const railAtFull = pullQuantity({
	id: 'log.rail_at_full',
	kind: 'pressure',
	sensor: 'fuel_pressure',
	worst: 'lowest',
	formula: 'median rail pressure of the last 0.4 s at full',
	measure: pull =>
		inFull(pull, 'fuel_pressure', rail => atEnd(rail, 0.4, pull.declared.sensor_error.pressure, 'fuel_pressure')),
});

export const railHeldLow = pullQuantity({
	id: 'log.rail_held_low',
	kind: 'pressure',
	sensor: 'fuel_pressure',
	formula: 'the lowest rail pressure that lasted 0.3 s and three readings at full',
	measure: pull =>
		inFull(pull, 'fuel_pressure', rail =>
			measured(heldLow(pull, rail), pull.declared.sensor_error.pressure, ['fuel_pressure']),
		),
});

export const pumpVolts = pullQuantity({
	id: 'log.pump_volts_low',
	kind: 'voltage',
	sensor: 'supply_volts',
	worst: 'lowest',
	formula: 'the lowest volts at the pump that lasted 0.3 s and three readings at full',
	measure: pull =>
		inFull(pull, 'pump_volts', volts => {
			const value = heldLow(pull, volts);
			return measured(value, voltsError(pull.declared, value ?? 0), ['pump_volts']);
		}),
});

export const pumpLoss = pullQuantity({
	id: 'log.pump_volts_loss',
	kind: 'voltage',
	range: [null, null],
	formula: 'the most that the pump lay under the battery for 0.3 s and three readings at full',
	measure: pull =>
		inFull(pull, 'pump_volts', volts => {
			const battery = pull.of('battery_volts');
			if (battery.time.length === 0) return lacking('battery_volts');
			const loss = mapped(volts, (at, time) => median(within(battery, time - 0.5, time + 0.5).value) - at);
			return measured(heldHigh(pull, known(loss)), voltsDifferenceError(pull.declared, median(volts.value)), [
				'battery_volts',
				'pump_volts',
			]);
		}),
});

/** kg/s of fuel through all injectors at a pulse (s), rpm and pressure across (Pa), by the sheet's figures; undefined without them. */
export function fuelFlow(
	pull: Pick<PullView, 'car' | 'pulse'>,
	pulseWidth: number,
	rpm: number,
	across: number,
): number | undefined {
	const [rated, at, dead, count] = [
		'injectors.rated_flow',
		'injectors.rated_pressure',
		'injectors.dead_time',
		'injectors.count',
	].map(id => numberOf(pull.car, id));
	if (rated === undefined || at === undefined || dead === undefined || count === undefined || !(across > 0))
		return undefined;
	return (count * openTime(pull.pulse, pulseWidth, dead) * rated * Math.sqrt(across / at) * rpm) / 120;
}
