import type { Bounded } from './bounded.ts';
import type { PumpFlow } from './pump.ts';
import { positive, within } from './range.ts';
import { runsOut } from './solve.ts';

/**
 * What goes through the line of a return rail, kg/s: all that the pump gives against rail pressure (Pa gauge, with the
 * boost on it when the regulator sees the manifold) plus the loss (Pa) that this very flow makes.
 *
 * Bound 'above': the pump's curve ends before the two meet. Undefined: nothing is proven even without loss.
 * Errors: OutOfRange. Source: solves Q = pump(rail + loss(Q)).
 */
export function returnLineFlow(
	pump: PumpFlow,
	railPressure: number,
	loss: (flow: number) => number,
): Bounded | undefined {
	const most = pump(railPressure);
	if (most === undefined) return undefined;
	const spare = (flow: number) => {
		const given = pump(railPressure + loss(flow));
		return given === undefined ? undefined : given - flow;
	};
	return runsOut(spare, 0, most);
}

/** A fuel system under load: where its regulator sits, set point (Pa gauge, boost included), the engine's flow (kg/s), line loss at it (Pa). */
export interface FuelSystem {
	readonly pump: PumpFlow;
	/** 'rail': a return rail, or a pump steered by the rail's own pressure. 'tank': returnless, set before the line. */
	readonly regulator: 'rail' | 'tank';
	readonly setPoint: number;
	readonly flow: number;
	readonly loss: number;
}

/**
 * Pressure at the rail while the engine takes its flow, Pa gauge.
 *
 * A regulator at the rail holds the set point, one in the tank the set point less the loss, as long as the pump gives the
 * flow at that; else it is the highest pressure at which the pump does. Bound 'below' at 0: it does not even without
 * pressure. 'above': the pump's curve ends first. Undefined: nothing is proven. Errors: OutOfRange. Solved, with a bracket.
 */
export function railPressure({ pump, regulator, setPoint, flow, loss }: FuelSystem): Bounded | undefined {
	positive('set point', setPoint);
	positive('fuel flow', flow);
	within('line loss', loss, 0, Number.MAX_VALUE);
	const wanted = regulator === 'rail' ? setPoint + loss : setPoint;
	const held = pressureHeld(pump, flow, wanted);
	if (held === undefined) return undefined;
	if (held.value < loss) return held.bound === 'above' ? undefined : { value: 0, bound: 'below' };
	return { value: held.value - loss, bound: held.bound };
}

/** The highest pump pressure, up to the wanted one, at which the pump still gives the flow. */
function pressureHeld(pump: PumpFlow, flow: number, wanted: number): Bounded | undefined {
	const given = pump(wanted);
	if (given !== undefined && given >= flow) return { value: wanted, bound: null };
	const spare = (pressure: number) => {
		const there = pump(pressure);
		return there === undefined ? undefined : there - flow;
	};
	return runsOut(spare, 0, wanted);
}
