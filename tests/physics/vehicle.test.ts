import { describe, expect, test } from 'vitest';
import {
	discMass,
	heating,
	leverTravel,
	roadLoad,
	shaftPower,
	slaveTravel,
	stopEnergy,
} from '../../src/physics/vehicle.ts';
import { expectRefusals } from './spoilt.ts';

describe('the car around the engine', () => {
	test('a disc is what its ring weighs, strip by strip', () => {
		const [diameter, thickness, strips] = [0.33, 0.032, 10_000];
		const [outer, inner] = [diameter / 2, 0.6 * (diameter / 2)];
		const width = (outer - inner) / strips;
		let mass = 0;
		for (let i = 0; i < strips; i++) mass += 7200 * 2 * Math.PI * (inner + (i + 0.5) * width) * width * thickness;
		expect(discMass(diameter, thickness, false)).toBeCloseTo(mass, 6);
		expect(discMass(diameter, thickness, true)).toBeCloseTo(0.6 * mass, 6);
	});

	test('a disc of 13 in weighs as much as such discs do, without their hats', () => {
		// Vented discs of 13 by 1.25 in weigh 20 to 24 lb, a third of it in hat and flange (common practice).
		const pounds = discMass(0.3302, 0.03175, true) / 0.45359237;
		expect(pounds).toBeGreaterThan(12);
		expect(pounds).toBeLessThan(20);
	});

	test('twice the speed is four times the energy, and the heat of it', () => {
		expect(stopEnergy(1500, 40)).toBeCloseTo(4 * stopEnergy(1500, 20), 6);
		expect(heating(stopEnergy(1500, 40), 8, 500)).toBeCloseTo(300, 9);
	});

	test('a lever through 180 deg pulls its whole diameter, through 60 its radius', () => {
		expect(leverTravel(0.03, 180)).toBeCloseTo(0.06, 12);
		expect(leverTravel(0.03, 60)).toBeCloseTo(0.03, 12);
	});

	test('a hill alone lifts the weight', () => {
		const lift = roadLoad(2000, 10, 0.1, 1) - roadLoad(2000, 10, 0, 1);
		expect(lift).toBeCloseTo(2000 * 9.80665 * 0.1 * 10, 6);
	});

	test('refuses what no car has', () => {
		expectRefusals(stopEnergy, { mass: 1500, speed: 30 });
		expectRefusals(heating, { energy: 1e5, mass: 8, 'specific heat': 500 });
		expectRefusals(slaveTravel, { 'master travel': 0.03, 'master bore': 0.02, 'slave bore': 0.02 });
		expectRefusals(shaftPower, { torque: 400, speed: 2000 });
		expect(() => discMass(0, 0.03, true)).toThrow('disc diameter');
		expect(() => discMass(0.3, 0, true)).toThrow('disc thickness');
		expect(() => leverTravel(0, 80)).toThrow('lever radius');
		expect(() => leverTravel(0.03, 181)).toThrow('lever sweep');
		expect(() => roadLoad(0, 20, 0, 1)).toThrow('mass');
		expect(() => roadLoad(1500, 0, 0, 1)).toThrow('speed');
		expect(() => roadLoad(1500, 20, 0, 0)).toThrow('drag area');
		expect(() => roadLoad(1500, 20, 0.5, 1)).toThrow('grade');
		expect(() => roadLoad(1500, 20, -0.01, 1)).toThrow('0 to 0.5');
	});
});
