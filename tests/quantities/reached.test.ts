import { describe, expect, test } from 'vitest';
import { inch, is, num, sheetOf, solved } from './by-hand.ts';

const mph = 1609.344 / 3600;

describe('the driveshaft at the speeds that the car reaches', () => {
	const car = {
		'driveline.shaft_length': num(60, 'in'),
		'driveline.shaft_diameter': num(3, 'in'),
		'driveline.shaft_wall': num(0.083, 'in'),
		'driveline.axle_ratio': num(3.5, ':1'),
		'driveline.tyre_diameter': num(26, 'in'),
		'driveline.highest_speed': num(100, 'mph'),
	};

	test('turns as shop arithmetic has it: mph x axle x 336 / tire', () => {
		// Common practice: engine rpm = mph x axle ratio x 336 / tire diameter in inches, here in direct gear.
		const q = solved(sheetOf(car));
		expect(Number(q('driveline.shaft_speed_at_highest').value) / ((100 * 3.5 * 336) / 26)).toBeCloseTo(1, 2);
	});

	test('reaches three quarters of its critical speed at the road speed that is reported as its limit', () => {
		const q = solved(sheetOf(car));
		const limit = Number(q('driveline.shaft_limit_speed').value);
		const there = solved(sheetOf({ ...car, 'driveline.highest_speed': num(limit / mph, 'mph') }));
		const critical = Number(q('driveline.shaft_critical_speed').value);
		expect(Number(there('driveline.shaft_speed_at_highest').value) / critical).toBeCloseTo(0.75, 6);
	});
});

describe('the widest gap', () => {
	const engine = {
		'engine.bore': num(4, 'in'),
		'engine.stroke': num(3, 'in'),
		'engine.compression_ratio': num(9, ':1'),
		'fuel.kind': is('petrol'),
		'boost.kind': is('none'),
	};
	// Common practice: what is set at home, however strong the coil is.
	test.each([
		['distributor', 0.06],
		['waste-spark', 0.07],
		['coil-per-plug', 0.07],
	])('is never believed over the usual most with a %s', (kind, most) => {
		const q = solved(sheetOf({ ...engine, 'ignition.kind': is(kind) }));
		expect(Number(q('ignition.gap_fires').value)).toBeGreaterThan(most * inch);
		expect(Number(q('ignition.gap_limit').value)).toBeCloseTo(most * inch, 9);
	});

	test('is what the coil fires where that is less', () => {
		const boosted = {
			'boost.kind': is('turbocharger'),
			'boost.target': num(15, 'psi'),
			'boost.intercooler': is('none'),
		};
		const q = solved(sheetOf({ ...engine, ...boosted, 'ignition.kind': is('distributor') }));
		expect(q('ignition.gap_limit').value).toBe(q('ignition.gap_fires').value);
		expect(Number(q('ignition.gap_limit').value)).toBeLessThan(0.06 * inch);
	});
});

describe('the stroke', () => {
	const stated = { 'engine.bore': num(4, 'in'), 'engine.displacement_stated': num(310, 'cu in') };
	test('follows from bore and displacement where nobody gave it: 4.00 in and 310 cu in make 3.08 in', () => {
		// 310 cu in / (8 pi/4 (4 in)^2) = 3.0837 in, worked out by hand.
		const q = solved(sheetOf({ ...stated, 'engine.redline': num(6000, 'rpm') }));
		expect(Number(q('engine.stroke_used').value) / inch).toBeCloseTo(3.0837, 3);
		expect(Number(q('engine.mean_piston_speed').value)).toBeCloseTo(2 * 3.0837 * inch * 100, 2);
		const given = solved(sheetOf({ ...stated, 'engine.stroke': num(3.25, 'in') }));
		expect(Number(given('engine.stroke_used').value)).toBeCloseTo(3.25 * inch, 9);
	});

	test('is named as missing where it cannot be had', () => {
		expect(solved(sheetOf({ 'engine.redline': num(6000, 'rpm') }))('engine.mean_piston_speed').missing).toEqual([
			'engine.stroke',
		]);
	});
});
