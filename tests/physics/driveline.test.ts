import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
	clutchTorque,
	engineSpeedAt,
	jointAngleDifference,
	shaftCriticalSpeed,
	shaftTurns,
	speedError,
} from '../../src/physics/driveline.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

describe('a clutch', () => {
	const clutch = { clampForce: 9000, friction: 0.3, outerRadius: 0.14, innerRadius: 0.09, faces: 2 };

	test('holds in step with clamp, friction and faces', () => {
		const usual = clutchTorque(clutch);
		for (const cause of ['clampForce', 'friction', 'faces'] as const)
			expect(clutchTorque({ ...clutch, [cause]: 2 * clutch[cause] })).toBeCloseTo(2 * usual, 9);
	});

	test('holds what a thin ring at every radius holds, with the pressure of even wear', () => {
		// Pressure c / r; clamp = sum p 2 pi r dr, torque = sum mu p 2 pi r^2 dr, a face.
		const rings = 100_000;
		const width = (clutch.outerRadius - clutch.innerRadius) / rings;
		let [clamp, torque] = [0, 0];
		for (let i = 0; i < rings; i++) {
			const r = clutch.innerRadius + (i + 0.5) * width;
			clamp += (1 / r) * 2 * Math.PI * r * width;
			torque += clutch.friction * (1 / r) * 2 * Math.PI * r * r * width;
		}
		expect(clutchTorque(clutch)).toBeCloseTo((2 * torque * clutch.clampForce) / clamp, 6);
	});

	test('is refused when it is inside out', () => {
		expect(() => clutchTorque({ ...clutch, innerRadius: 0.14 })).toThrow('inner radius');
	});
});

/** Lowest bending frequency of a pinned tube in rpm, by inverse iteration on 400 pieces: no pi in it. */
function criticalByPieces(length: number, outer: number, inner: number): number {
	const n = 400;
	const h = length / n;
	const stiffness = (205e9 * Math.PI * (outer ** 4 - inner ** 4)) / 64;
	const massPerMetre = (7850 * Math.PI * (outer ** 2 - inner ** 2)) / 4;
	/** Solves -w'' = load between pinned ends, by elimination. */
	const bend = (load: number[]): number[] => {
		const upper: number[] = [];
		const right: number[] = [];
		for (let i = 0; i < n - 1; i++) {
			const pivot = 2 - (upper[i - 1] ?? 0);
			upper.push(1 / pivot);
			right.push((h * h * load[i]! + (right[i - 1] ?? 0)) / pivot);
		}
		const w = new Array<number>(n - 1);
		for (let i = n - 2; i >= 0; i--) w[i] = right[i]! + upper[i]! * (w[i + 1] ?? 0);
		return w;
	};
	let shape: number[] = Array.from({ length: n - 1 }, (_, i) => (i + 1) * (n - 1 - i));
	let square = 0;
	for (let turn = 0; turn < 20; turn++) {
		const next = bend(bend(shape)).map(w => (w * massPerMetre) / stiffness);
		square = Math.max(...shape) / Math.max(...next);
		shape = next.map(w => w * square);
	}
	return (Math.sqrt(square) * 60) / (2 * Math.PI);
}

describe('the critical speed of a drive shaft', () => {
	test('is that of a beam solved piece by piece', () => {
		for (const [length, diameter, wall] of [
			[1.2, 0.0762, 0.0021],
			[1.5, 0.0889, 0.0024],
			[1, 0.05, 0.025],
		] as const)
			expect(
				shaftCriticalSpeed(length, diameter, wall) / criticalByPieces(length, diameter, diameter - 2 * wall),
			).toBeCloseTo(1, 4);
	});

	test('falls with the square of length, rises with diameter, and hardly cares for wall', () => {
		expect(shaftCriticalSpeed(0.75, 0.075, 0.002) / shaftCriticalSpeed(1.5, 0.075, 0.002)).toBeCloseTo(4, 10);
		expect(shaftCriticalSpeed(1.5, 0.09, 0.002)).toBeGreaterThan(shaftCriticalSpeed(1.5, 0.075, 0.002));
		expect(shaftCriticalSpeed(1.5, 0.075, 0.003) / shaftCriticalSpeed(1.5, 0.075, 0.002)).toBeCloseTo(0.987, 3);
	});
});

describe('road and engine speed', () => {
	test('go together, with the shaft between them', () => {
		// 1 m round, 3:1 axle, 1:1 top: 3 turns of the shaft a metre.
		expect(shaftTurns(3, 1 / Math.PI)).toBeCloseTo(3, 12);
		expect(engineSpeedAt(10, 1, 3)).toBeCloseTo(1800, 10);
		expect(engineSpeedAt(10, 0.7, 3)).toBeCloseTo(1260, 10);
	});

	test('a signal of 4000 pulses for 8000 expected reads half, and an even one is right', () => {
		expect(speedError(4000, 8000)).toBe(-0.5);
		expect(speedError(8000, 8000)).toBe(0);
	});
});

describe('two joints', () => {
	test('cancel when their angles are of one size, whichever way they point', () => {
		expect(jointAngleDifference(2, 2)).toBe(0);
		expect(jointAngleDifference(2, -2)).toBe(0);
		expect(jointAngleDifference(2.5, -1)).toBe(1.5);
	});

	test('turn evenly together exactly where the difference is 0', () => {
		// Yokes in phase: tan(out) = tan(in) cos(rear) / cos(front), so only that factor makes it uneven.
		const uneven = (front: number, rear: number) =>
			Math.abs(Math.cos((rear * Math.PI) / 180) / Math.cos((front * Math.PI) / 180) - 1);
		fc.assert(
			fc.property(between(-20, 20), between(-20, 20), (front, rear) => {
				expect(uneven(front, -front)).toBe(0);
				if (jointAngleDifference(front, rear) > 0.01) expect(uneven(front, rear)).toBeGreaterThan(0);
			}),
			seeded,
		);
	});
});

test('what cannot be is refused by name', () => {
	expectRefusals(
		(clampForce, friction, innerRadius, faces) =>
			clutchTorque({
				clampForce: clampForce!,
				friction: friction!,
				outerRadius: 0.14,
				innerRadius: innerRadius!,
				faces: faces!,
			}),
		{ 'clamp force': 9000, 'friction coefficient': 0.3, 'inner radius': 0.09, faces: 2 },
	);
	expectRefusals((l, d, w) => shaftCriticalSpeed(l!, d!, w!), {
		'shaft length': 1.2,
		'shaft diameter': 0.08,
		'shaft wall': 0.002,
	});
	expectRefusals((a, t) => shaftTurns(a!, t!), { 'axle ratio': 3.7, 'tire diameter': 0.66 });
	expectRefusals((v, g, t) => engineSpeedAt(v!, g!, t!), { 'road speed': 29, 'gear ratio': 0.7, 'shaft turns': 1.8 });
	expectRefusals((s, e) => speedError(s!, e!), { 'pulses sent': 8000, 'pulses expected': 8000 });
	expectRefusals((f, r) => jointAngleDifference(f!, r!), { 'front joint angle': 2, 'rear joint angle': 2 });
});

test('ranges are taken to their ends and no further', () => {
	expect(() => shaftCriticalSpeed(1.2, 0.08, 0.04)).not.toThrow();
	expect(() => shaftCriticalSpeed(1.2, 0.08, 0.0401)).toThrow('shaft wall');
	expect(() => shaftCriticalSpeed(0.4, 0.08, 0.002)).not.toThrow();
	expect(() => shaftCriticalSpeed(0.399, 0.08, 0.002)).toThrow('shaft length');
	expectRange(angle => jointAngleDifference(angle, 0), 'front joint angle', -45, 45);
	expectRange(angle => jointAngleDifference(0, angle), 'rear joint angle', -45, 45);
});
