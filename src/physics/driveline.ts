import { OutOfRange, positive, within } from './range.ts';

/** A friction clutch: clamp force in N, friction coefficient, outer and inner radius of the lining in m, faces (one disc: 2). */
export interface Clutch {
	readonly clampForce: number;
	readonly friction: number;
	readonly outerRadius: number;
	readonly innerRadius: number;
	readonly faces: number;
}

/**
 * Torque that a bedded clutch holds, N m, all faces together.
 *
 * Errors: OutOfRange, also for an inner radius that is not under the outer one.
 * Source: uniform wear, Shigley, Mechanical Engineering Design, ch. 16: F mu (ro + ri) / 2 a face.
 */
export function clutchTorque({ clampForce, friction, outerRadius, innerRadius, faces }: Clutch): number {
	positive('clamp force', clampForce);
	positive('friction coefficient', friction);
	positive('inner radius', innerRadius);
	positive('faces', faces);
	if (!(innerRadius < outerRadius)) throw new OutOfRange('inner radius', innerRadius, `under ${outerRadius}`);
	return (faces * friction * clampForce * (outerRadius + innerRadius)) / 2;
}

/** Steel tube: speed of sound along it, m/s, from 205 GPa and 7850 kg/m3. */
const steel = Math.sqrt(205e9 / 7850);

/**
 * Speed at which a tubular steel shaft bends into resonance, rpm: length between the joints, outer diameter and wall in m.
 *
 * First bending mode of a pinned tube: pi/2 sqrt(E I / (rho A L^4)), with I / A = (outer^2 + inner^2) / 16 exactly.
 * A wall of half the diameter is a solid bar. Errors: OutOfRange, also for a shaft under 5 diameters long.
 * Source: Thomson, Theory of Vibration, ch. 9 (Euler beam). Real joints give way: keep under three quarters of it.
 */
export function shaftCriticalSpeed(length: number, diameter: number, wall: number): number {
	positive('shaft diameter', diameter);
	positive('shaft wall', wall);
	within('shaft wall', wall, 0, diameter / 2);
	within('shaft length', length, 5 * diameter, 100);
	const inner = diameter - 2 * wall;
	const gyration = Math.sqrt(diameter * diameter + inner * inner) / 4;
	return (60 * (Math.PI / 2) * steel * gyration) / (length * length);
}

/** Turns of the drive shaft for each m of road: axle ratio, tire diameter in m. Errors: OutOfRange. Geometry, tire not squashed. */
export function shaftTurns(axleRatio: number, tireDiameter: number): number {
	positive('axle ratio', axleRatio);
	positive('tire diameter', tireDiameter);
	return axleRatio / (Math.PI * tireDiameter);
}

/** Engine speed, rpm, at a road speed in m/s in a gear; shaft turns a meter by `shaftTurns`. Errors: OutOfRange. Geometry. */
export function engineSpeedAt(roadSpeed: number, gearRatio: number, shaftTurnsPerMeter: number): number {
	positive('road speed', roadSpeed);
	positive('gear ratio', gearRatio);
	positive('shaft turns', shaftTurnsPerMeter);
	return 60 * roadSpeed * shaftTurnsPerMeter * gearRatio;
}

/** How much the speed signal is off: pulses sent over pulses expected, less 1; same unit. Errors: OutOfRange. Definition. */
export function speedError(sent: number, expected: number): number {
	positive('pulses sent', sent);
	positive('pulses expected', expected);
	return sent / expected - 1;
}

/**
 * How far the two joints of a shaft are from cancelling each other, deg: the difference of their angles' sizes.
 *
 * A joint's unevenness depends on the size of its angle, not on its sign. Range -45 to 45. Errors: OutOfRange. Cardan joint.
 */
export function jointAngleDifference(front: number, rear: number): number {
	within('front joint angle', front, -45, 45);
	within('rear joint angle', rear, -45, 45);
	return Math.abs(Math.abs(front) - Math.abs(rear));
}
