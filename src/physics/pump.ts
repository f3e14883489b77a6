import { psi } from './constants.ts';
import type { Curve } from './interpolate.ts';
import { positive, within } from './range.ts';

/** What a pump gives, kg/s, against a pressure in Pa gauge at its outlet; undefined where nothing is proven. */
export type PumpFlow = (pressure: number) => number | undefined;

/**
 * A pump with a measured curve (Pa gauge against kg/s), at another voltage than it was measured: Q(p) = r Qc(p / r^2).
 *
 * `voltageRatio` r is volts now over volts of the curve, 0.3 to 2. Under the curve's first pressure its flow is held,
 * beyond the last nothing is proven. Errors: OutOfRange, also for a pressure under 0.
 * Source: estimate: the affinity laws with speed in step with voltage.
 */
export function pumpFromCurve(curve: Curve, voltageRatio: number): PumpFlow {
	within('voltage ratio', voltageRatio, 0.3, 2);
	return pressure => {
		within('pressure', pressure, 0, Number.MAX_VALUE);
		const there = pressure / (voltageRatio * voltageRatio);
		return curve.beyond(there) === 'last' ? undefined : voltageRatio * Math.max(0, curve.at(there));
	};
}

/** A pump of which one point is known: flow in kg/s against a pressure in Pa gauge. */
export interface PumpPoint {
	readonly flow: number;
	readonly pressure: number;
	/** Flow goes with voltage to this power, 1 to 3: usual 2, spread 1.5 to 2.5. */
	readonly exponent?: number;
	/** Share of the rated flow lost for each Pa above the rated pressure: usual 0.8 % a psi, spread 0.5 to 1.2. */
	readonly fall?: number;
}

/** 0.8 % a psi, in 1/Pa. */
const usualFall = 0.008 / psi;

/**
 * A pump of which one point is known (at 0 Pa: its free flow): held below that pressure, falling in a straight line above
 * it, never under 0.
 *
 * `voltageRatio` as for a curve. Errors: OutOfRange. Source: estimate, common practice, from memory.
 */
export function pumpFromPoint(point: PumpPoint, voltageRatio: number): PumpFlow {
	const { flow, pressure: rated, exponent = 2, fall = usualFall } = point;
	positive('pump flow', flow);
	within('pump pressure', rated, 0, Number.MAX_VALUE);
	within('exponent of voltage', exponent, 1, 3);
	within('fall with pressure', fall, 0, 1e-5);
	within('voltage ratio', voltageRatio, 0.3, 2);
	const held = flow * voltageRatio ** exponent;
	return pressure => {
		within('pressure', pressure, 0, Number.MAX_VALUE);
		return Math.max(0, held - flow * fall * Math.max(0, pressure - rated));
	};
}
