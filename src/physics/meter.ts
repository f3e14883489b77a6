import type { Bounded } from './bounded.ts';
import type { Curve } from './interpolate.ts';
import { positive, within } from './range.ts';

/** An air meter: its curve, V against kg/s, and what its flow is multiplied by where it sits (1, or `boreScale`). */
export interface AirMeter {
	readonly curve: Curve;
	readonly scale: number;
}

/** How much more flows past a slot insert in a pipe of another bore (m) than that of its curve. Errors: OutOfRange. Area ratio. */
export function boreScale(pipeBore: number, curveBore: number): number {
	positive('pipe bore', pipeBore);
	positive('bore of the curve', curveBore);
	return (pipeBore / curveBore) ** 2;
}

/**
 * Flow that the meter shows at a voltage, kg/s; beyond an end of its curve that end's flow, with the side of the true one.
 *
 * At the highest voltage that the controller can read (its ceiling, or the scaler's full input) it is the meter's ceiling.
 * Errors: OutOfRange.
 */
export function meterFlow({ curve, scale }: AirMeter, volts: number): Bounded {
	within('volts', volts, 0, 100);
	return { value: scale * curve.at(volts), bound: sideOf(curve, volts) };
}

/**
 * Volts of the meter at a flow in kg/s; beyond its curve that end's volts, with the side of the true ones.
 *
 * At 1.05 times the peak air flow it is the smallest scaler input that keeps 5 % headroom. Errors: OutOfRange, also for a
 * curve that rises and falls.
 */
export function meterVolts({ curve, scale }: AirMeter, flow: number): Bounded {
	positive('air flow', flow);
	return curve.inverse(flow / scale);
}

/** How a controller reads a meter: the volts it reads up to, the volts in that the scaler turns into those (none: the same). */
export interface MeterReading {
	readonly ceiling: number;
	readonly scalerFull: number;
	/** The curve that is in the controller, V against kg/s; null: it matches the meter. */
	readonly controllerCurve: Curve | null;
}

/**
 * Air that the controller believes over the air there is, at a true flow in kg/s: 1 is right, under 1 with boost means
 * leaner and more spark than meant. Clipped at the ceiling. A bound says that a curve ended before the answer.
 *
 * Errors: OutOfRange. Definition.
 */
export function loadSeen(meter: AirMeter, reading: MeterReading, flow: number): Bounded {
	const { ceiling, scalerFull, controllerCurve } = reading;
	positive('ceiling', ceiling);
	positive('scaler full input', scalerFull);
	const volts = meterVolts(meter, flow);
	if (controllerCurve === null) {
		const top = meterFlow(meter, scalerFull);
		return flow <= top.value ? { value: 1, bound: null } : { value: top.value / flow, bound: top.bound };
	}
	const wanted = (volts.value * ceiling) / scalerFull;
	const signal = Math.min(wanted, ceiling);
	const bound = sideOf(controllerCurve, signal) ?? (signal < ceiling ? volts.bound : null);
	return { value: controllerCurve.at(signal) / flow, bound };
}

/** On which side of the held end the true flow lies; a meter's flow rises with its volts. */
function sideOf(curve: Curve, volts: number): Bounded['bound'] {
	const end = curve.beyond(volts);
	return end === null ? null : end === 'last' ? 'above' : 'below';
}
