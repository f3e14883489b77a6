import { OutOfRange, positive, within } from './range.ts';

/**
 * Flow of an injector held open, kg/s: rated flow in kg/s at rated pressure in Pa, pressure across it now in Pa.
 *
 * The pressure across is rail minus manifold; 0 or less is refused, nothing comes out. Errors: OutOfRange.
 * Source: orifice relation, flow goes with the square root of the pressure across (Bernoulli).
 */
export function injectorFlow(ratedFlow: number, ratedPressure: number, pressureAcross: number): number {
	positive('rated flow', ratedFlow);
	positive('rated pressure', ratedPressure);
	positive('pressure across the injector', pressureAcross);
	return ratedFlow * Math.sqrt(pressureAcross / ratedPressure);
}

/** What an injector must pass: fuel flow of the engine (kg/s), number of injectors, rpm, dead time (s, opening to full flow). */
export interface InjectorJob {
	readonly fuelFlow: number;
	readonly injectors: number;
	readonly rpm: number;
	readonly deadTime: number;
}

/** Time of one four-stroke cycle, s, at rpm. Errors: OutOfRange. */
export function cycleTime(rpm: number): number {
	positive('rpm', rpm);
	return 120 / rpm;
}

/**
 * How long each injector is driven in a cycle, s, with its flow held open in kg/s. Dead time 0 to 0.02 s.
 *
 * Over the cycle time it cannot be done. With idle air, lambda 1 and idle rpm it is the idle pulse. Errors: OutOfRange. Definition.
 */
export function pulseWidth(job: InjectorJob, flow: number): number {
	positive('injector flow', flow);
	return fuelInCycle(job) / flow + job.deadTime;
}

/** Share of the cycle that an injector is driven: pulse width in s, rpm. Over 1 it cannot be done. Errors: OutOfRange. */
export function duty(pulseWidth: number, rpm: number): number {
	positive('pulse width', pulseWidth);
	return pulseWidth / cycleTime(rpm);
}

/**
 * The flow held open, kg/s, at the pressure across it now, that does the job at a duty limit (above 0 to 1).
 *
 * Turn it to rated pressure with `injectorFlow(needed, pressureAcross, ratedPressure)`. Errors: OutOfRange, also where the
 * dead time alone takes the limit up: then no injector is large enough. Closed form of `duty`.
 */
export function injectorFlowNeeded(job: InjectorJob, dutyLimit: number): number {
	positive('duty limit', dutyLimit);
	within('duty limit', dutyLimit, 0, 1);
	const fuel = fuelInCycle(job);
	const longest = dutyLimit * cycleTime(job.rpm);
	if (!(job.deadTime < longest)) throw new OutOfRange('dead time', job.deadTime, `under ${longest}`);
	return fuel / (longest - job.deadTime);
}

/** kg through one injector in one cycle. */
function fuelInCycle({ fuelFlow, injectors, rpm, deadTime }: InjectorJob): number {
	positive('fuel flow', fuelFlow);
	positive('injectors', injectors);
	within('dead time', deadTime, 0, 0.02);
	return (fuelFlow * cycleTime(rpm)) / injectors;
}
