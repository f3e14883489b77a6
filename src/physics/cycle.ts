import type { ClosedCycle } from './closed-cycle.ts';
import { CylinderGas } from './cylinder-gas.ts';
import { positive, within } from './range.ts';
import { checkCylinder, sweptVolume } from './slider-crank.ts';
import { burntAt, tail, usualPower } from './wiebe.ts';

/** What one cycle gives. The three lists run side by side, a place a step. */
export interface CycleTrace {
	/** deg from top dead center. */
	readonly angle: Float64Array;
	/** Pa absolute. */
	readonly pressure: Float64Array;
	/** K, of the core of the gas that the flame has not reached: compressed without loss by what burns beside it. */
	readonly endGas: Float64Array;
	/** K, of the unburnt zone as a whole where the valve opens. */
	readonly unburntEnd: number;
	/** The place where 90 % is burnt, or the last one when a valve opens first. */
	readonly ninety: number;
	/** Highest pressure, Pa absolute, and its angle, deg after top dead center. */
	readonly peakPressure: number;
	readonly peakAngle: number;
	/** J on the piston and J into the walls, from `shut` to where it ends. */
	readonly work: number;
	readonly wallHeat: number;
	/** `work` over swept volume, Pa: the indicated mean pressure of the valves-shut part alone. */
	readonly meanPressure: number;
}

/** Longest step while the charge burns, deg. A tenth of it moves the peak pressure by under 0.01 %: a test holds that. */
export const usualStep = 2;

/** Before and after the burn nothing turns sharply: steps so many times as long move the peak by under 1e-6 of it. */
const quiet = 2;

/** Fewest steps to 90 % burnt, and from there on, so that a burn in almost no time still comes out right. */
const burnSteps = 15;

/**
 * Runs the two zones of gas from valves shut to valve open.
 *
 * The steps are equal between the angles where something starts or ends: spark, 90 % burnt, burn over. Exact to 1e-4 in
 * the limits: nothing burnt, all burnt at once, constant gamma, no loss or a constant film coefficient; tests hold that.
 * Refuses a cylinder that cannot turn, a pressure, temperature or duration not above 0, a spark while a valve is open.
 * Source: Heywood, Internal Combustion Engine Fundamentals, sections 9.2 and 12.4; Ferguson & Kirkpatrick, Internal
 * Combustion Engines, finite heat release.
 */
export function closedCycle(cycle: ClosedCycle, longestStep = usualStep): CycleTrace {
	check(cycle, longestStep);
	const legs = legsOf(cycle, longestStep);
	const places = legs.reduce((sum, { steps }) => sum + steps, 1);
	const ninety = legs[0]!.steps + legs[1]!.steps;
	const gas = new CylinderGas(cycle, places);
	for (const { from, to, steps, lit } of legs) {
		if (lit) gas.light();
		// After 90 % the burn slows down: once the pressure falls, it falls to the end.
		gas.follow(from, to, steps, cycle.toPeak ? ninety : places);
	}
	return {
		angle: gas.angle.subarray(0, gas.places),
		pressure: gas.pressure.subarray(0, gas.places),
		endGas: gas.endGas.subarray(0, gas.places),
		unburntEnd: gas.unburnt,
		ninety,
		peakPressure: gas.peakPressure,
		peakAngle: gas.peakAngle,
		work: gas.work,
		wallHeat: gas.wallHeat,
		meanPressure: gas.work / sweptVolume(cycle.cylinder.bore, cycle.cylinder.stroke),
	};
}

/** The stretches between spark, 90 % burnt and burn over, each with its count of steps; one past the valve has none. */
function legsOf({ shut, opens, burn }: ClosedCycle, longestStep: number) {
	const ninety = burn.start + burntAt(0.9, burn.power) * burn.duration;
	const stops = [shut, burn.start, ninety, burn.start + tail * burn.duration, opens];
	return stops.slice(1).map((stop, i) => {
		const from = Math.min(stops[i]!, opens);
		const to = Math.min(stop, opens);
		const burning = i === 1 || i === 2;
		const longest = burning ? longestStep : quiet * longestStep;
		const steps = to > from ? Math.max(Math.ceil((to - from) / longest), burning ? burnSteps : 1) : 0;
		return { from, to, steps, lit: i === 1 };
	});
}

function check(cycle: ClosedCycle, longestStep: number): void {
	const { burn, walls } = cycle;
	checkCylinder(cycle.cylinder);
	positive('pressure', cycle.pressure);
	positive('temperature', cycle.temperature);
	positive('burn duration', burn.duration);
	within('power of the burn', burn.power ?? usualPower, 2, 6);
	positive('wall temperature', walls.temperature);
	positive('step', longestStep);
	within('speed', cycle.speed, 100, 20000);
	within('angle where the valves are shut', cycle.shut, -180, 0);
	within('angle where a valve opens', cycle.opens, 0, 180);
	within('angle of the spark', burn.start, cycle.shut, cycle.opens);
	within('heat', burn.heat, 0, Number.MAX_VALUE);
	if (walls.film !== 'woschni') within('film coefficient', walls.film, 0, 10000);
}
