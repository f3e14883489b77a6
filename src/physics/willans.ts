import { positive, within } from './range.ts';

/**
 * A throttled gasoline engine, warm, at lambda 1: share of the fuel's energy that gets to the piston, and what friction and
 * throttling take, Pa of mean pressure. Estimate: passenger-car engines of 1985 to 2010 lie within 12 % of the fuel that it gives.
 */
const [inside, lost] = [0.38, 1.6e5];

/**
 * Power in the fuel that an engine burns, W, for so much power at its flywheel: W (0: idle), rpm, displacement in m3.
 *
 * A straight line: what comes out and what the engine takes itself, over one efficiency. To some 3500 rpm and 8 bar of brake mean
 * pressure, unboosted. Errors: OutOfRange. Source: Willans's line, as in Guzzella & Onder, Introduction to Modeling and Control
 * of Internal Combustion Engine Systems, section 2.5 (from memory).
 */
export function fuelPower(power: number, speed: number, displacement: number): number {
	within('power', power, 0, 1e7);
	positive('speed', speed);
	positive('displacement', displacement);
	return (power + (lost * displacement * speed) / 120) / inside;
}
