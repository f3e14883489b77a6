import { OutOfRange, positive, within } from './range.ts';

/** Energy that the brakes turn into heat in one stop, J: mass in kg, speed in m/s. Errors: OutOfRange. Definition. */
export function stopEnergy(mass: number, speed: number): number {
	positive('mass', mass);
	positive('speed', speed);
	return (mass * speed * speed) / 2;
}

/** Share of the width of a vented disc that is iron, and how far in its ring goes, of its diameter. Estimates, from discs of cars. */
const vented = { iron: 0.6, inner: 0.6 } as const;

/**
 * Mass of the ring of a brake disc that takes up the heat of a stop, kg: diameter and thickness in m. The hat stays cool.
 *
 * Estimate: gray iron of 7200 kg/m3 from 0.6 of the diameter outward, 60 % iron where it is vented. Errors: OutOfRange.
 */
export function discMass(diameter: number, thickness: number, isVented: boolean): number {
	positive('disc diameter', diameter);
	positive('disc thickness', thickness);
	const ring = (Math.PI / 4) * diameter * diameter * (1 - vented.inner ** 2);
	return 7200 * ring * thickness * (isVented ? vented.iron : 1);
}

/** Specific heat of gray iron between 100 and 400 degC, J/kgK. Handbook value, from memory (460 cold, 590 at 400 degC). */
export const ironHeat = 530;

/**
 * How much warmer a mass gets, K, that takes up all of an energy: J, kg, J/kgK. A stop is too short for air to cool a disc.
 *
 * Errors: OutOfRange. Definition of specific heat; so for a single stop Limpert, Brake Design and Safety.
 */
export function heating(energy: number, mass: number, specificHeat: number): number {
	positive('energy', energy);
	positive('mass', mass);
	positive('specific heat', specificHeat);
	return energy / (mass * specificHeat);
}

/**
 * Travel of a slave piston, m, for the travel of its master, m; bores in m. The same fluid leaves one and enters the other.
 *
 * Errors: OutOfRange. Source: Pascal's law, fluid and hose taken as stiff.
 */
export function slaveTravel(travel: number, masterBore: number, slaveBore: number): number {
	positive('master travel', travel);
	positive('master bore', masterBore);
	positive('slave bore', slaveBore);
	return travel * (masterBore / slaveBore) ** 2;
}

/**
 * How far a lever pulls a cable, m: radius in m from the shaft to the cable's end, sweep in deg, the pull square to the
 * middle of the sweep, so that it is the chord. Errors: OutOfRange. Geometry.
 */
export function leverTravel(radius: number, sweep: number): number {
	positive('lever radius', radius);
	within('lever sweep', sweep, 1, 180);
	return 2 * radius * Math.sin(((sweep / 2) * Math.PI) / 180);
}

/** Power that a torque in N m carries at an engine speed in rpm, W. Stalled, a converter turns all of it into heat. Definition. */
export function shaftPower(torque: number, speed: number): number {
	positive('torque', torque);
	positive('speed', speed);
	return (torque * 2 * Math.PI * speed) / 60;
}

/**
 * Power at the wheels, W, that holds a vehicle at a speed in m/s on a grade (rise over length): mass in kg, drag area in m2.
 *
 * Rolling resistance 0.012, air 1.2 kg/m3. Errors: OutOfRange. Source: road load equation, Gillespie, Fundamentals of
 * Vehicle Dynamics, ch. 4.
 */
export function roadLoad(mass: number, speed: number, grade: number, dragArea: number): number {
	positive('mass', mass);
	positive('speed', speed);
	positive('drag area', dragArea);
	if (!(grade >= 0 && grade < 0.5)) throw new OutOfRange('grade', grade, '0 to 0.5');
	return (mass * 9.80665 * (0.012 + grade) + 0.6 * dragArea * speed * speed) * speed;
}

/** Highest speed, m/s, of the speed symbols on a tire's side. Source: UN Regulation 30, table of speed categories (from memory). */
export const speedSymbols = {
	q: 160 / 3.6,
	r: 170 / 3.6,
	s: 180 / 3.6,
	t: 190 / 3.6,
	h: 210 / 3.6,
	v: 240 / 3.6,
	w: 270 / 3.6,
	y: 300 / 3.6,
} as const;
