import { describe, expect, it } from 'vitest';
import {
	headClampRatio,
	headFastenerArea,
	nutFactor,
	preloadFromTorque,
	preloadOfStretch,
	stressArea,
} from '../../src/physics/bolts.ts';

const inch = 0.0254;

describe('stress area', () => {
	it('is larger with a finer pitch', () => {
		expect(stressArea('metric', 0.012, 0.00125)).toBeGreaterThan(stressArea('metric', 0.012, 0.00175));
	});

	it('refuses a pitch as coarse as the screw', () => {
		expect(() => stressArea('metric', 0.01, 0.01)).toThrow('pitch is 0.01; accepted: under the diameter');
		expect(() => stressArea('unified', 0, 0.001)).toThrow('diameter');
	});
});

describe('a head fastener known by its diameter', () => {
	it.each([
		['3/8 in', 0.375 * inch, stressArea('unified', 0.375 * inch, inch / 16)],
		['7/16 in', 0.4375 * inch, stressArea('unified', 0.4375 * inch, inch / 14)],
		['7/16 in as 0.44', 0.44 * inch, stressArea('unified', 0.4375 * inch, inch / 14)],
		['M11 as 0.433 in', 0.433 * inch, stressArea('metric', 0.011, 0.002)],
	])('is taken for the nearest usual thread: %s', (_, diameter, area) => {
		expect(headFastenerArea(diameter).coarse).toBe(area);
	});

	it('has more area if it is a fine thread', () => {
		for (const mm of [9.525, 10, 11, 11.1125, 12, 12.7]) {
			const { coarse, fine } = headFastenerArea(mm / 1000);
			expect(fine).toBeGreaterThan(coarse);
		}
	});

	it('of another size is cut in the proportions of the nearest: a 9/16 in one, an M8, one between two', () => {
		const share = (diameter: number) => headFastenerArea(diameter).coarse / diameter ** 2;
		expect(share(0.5625 * inch)).toBeCloseTo(share(0.5 * inch), 12);
		expect(share(0.008)).toBeCloseTo(share(0.375 * inch), 12);
		expect(share(0.42 * inch)).toBeCloseTo(share(0.011), 12);
		// The real 9/16-12 UNC has 0.182 in2 (ASME B1.1).
		expect(headFastenerArea(0.5625 * inch).coarse / inch ** 2).toBeCloseTo(0.182, 2);
	});
});

describe('preload', () => {
	it('is higher the slicker the thread, for one torque', () => {
		const pull = (factor: number) => preloadFromTorque(100, 0.011, factor);
		expect(pull(nutFactor.moly)).toBeGreaterThan(pull(nutFactor.oiled));
		expect(pull(nutFactor.oiled)).toBeGreaterThan(pull(nutFactor.zinc));
		expect(pull(nutFactor.zinc)).toBeGreaterThan(pull(nutFactor.dry));
		expect(pull(nutFactor.oiled)).toBeCloseTo(100 / (0.18 * 0.011), 6);
	});

	it('refuses a friction that no thread has', () => {
		expect(() => preloadFromTorque(100, 0.011, 0)).toThrow('nut factor');
		expect(() => preloadFromTorque(-1, 0.011, 0.2)).toThrow('torque');
	});

	it('of a stretch fastener falls by a quarter when it is used again', () => {
		expect(preloadOfStretch(70e-6, false)).toBeCloseTo(58100, 6);
		expect(preloadOfStretch(70e-6, true)).toBeCloseTo(0.75 * 58100, 6);
		expect(() => preloadOfStretch(0, true)).toThrow('stress area');
	});
});

describe('head clamp ratio', () => {
	const head = { preload: 50e3, fasteners: 17, cylinders: 4, gasketBore: 0.104, peakPressure: 60e5 };

	it('is all the pull of one bank over the lift on all its bores', () => {
		const lift = 4 * 60e5 * Math.PI * 0.052 ** 2;
		expect(headClampRatio(head)).toBeCloseTo((17 * 50e3) / lift, 12);
	});

	it('halves when the peak pressure doubles', () => {
		expect(headClampRatio({ ...head, peakPressure: 120e5 })).toBeCloseTo(headClampRatio(head) / 2, 12);
	});

	it('refuses a head without pull, fasteners, bores or pressure', () => {
		for (const name of ['preload', 'fasteners', 'cylinders', 'gasketBore', 'peakPressure'] as const) {
			expect(() => headClampRatio({ ...head, [name]: 0 })).toThrow(`${name} is 0; accepted: above 0`);
		}
	});
});
