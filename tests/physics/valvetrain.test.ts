import { describe, expect, test } from 'vitest';
import { floatSpeed } from '../../src/physics/valvetrain.ts';
import { expectRange, expectRefusals } from './spoilt.ts';

const train = { lift: 0.0127, duration: 270, openForce: 1334, mass: 0.29 };

describe('valve float', () => {
	test('begins where the spring just gives what the nose of the lift asks, by differences', () => {
		const omega = (floatSpeed(train) * 2 * Math.PI) / 60;
		const lift = (time: number) =>
			(train.lift / 2) * (1 + Math.cos((2 * Math.PI * omega * time) / ((train.duration * Math.PI) / 180)));
		const step = 1e-6;
		const acceleration = (lift(step) - 2 * lift(0) + lift(-step)) / step ** 2;
		expect((-train.mass * acceleration) / train.openForce).toBeCloseTo(1, 4);
	});

	// Common practice: 0.5 in of lift on hydraulic rollers with 300 lbf open goes to some 5800 to 6500 rpm.
	test('of a street camshaft lies where practice has it', () => {
		expect(floatSpeed(train)).toBeGreaterThan(5700);
		expect(floatSpeed(train)).toBeLessThan(6600);
	});

	test('refuses what is no camshaft', () => {
		expectRefusals(
			(lift, openForce, mass) => floatSpeed({ ...train, lift: lift!, openForce: openForce!, mass: mass! }),
			{
				'valve lift': 0.0127,
				'spring force': 1334,
				'moving mass': 0.29,
			},
		);
		expectRange(duration => floatSpeed({ ...train, duration }), 'duration', 100, 400);
	});
});
