import { describe, expect, test } from 'vitest';
import { horsepower, inch, is, num, psi, sheetOf, solved } from './by-hand.ts';

// What practice says, with no source, must come out of whole sheets together: usual values where nothing is answered.

/** Compression 9:1, intake closing 50 deg, spark 20 deg before top; everything else usual. */
const engine = {
	'engine.bore': num(4, 'in'),
	'engine.stroke': num(3, 'in'),
	'engine.compression_ratio': num(9, ':1'),
	'engine.intake_closes': num(50, 'deg'),
	'ignition.full_load_advance': num(20, 'deg'),
	'fuel.kind': is('petrol'),
};

describe('three spark gaps, on a coil that nobody has tried', () => {
	const boosted = (gap: number) =>
		solved(
			sheetOf({
				...engine,
				'boost.kind': is('turbocharger'),
				'boost.intercooler': is('air-to-air'),
				'boost.target': num(10, 'psi'),
				'ignition.gap': num(gap, 'in'),
			}),
		);

	test('0.054 in fires unboosted', () => {
		const q = solved(sheetOf({ ...engine, 'boost.kind': is('none'), 'ignition.gap': num(0.054, 'in') }));
		expect(q('ignition.spark_margin').value).toBeGreaterThan(0);
		expect(q('ignition.capacity').assumed).toContain('ignition.capacity');
	});

	test('0.035 in blows out between 10 and 15 psi', () => {
		const limit = Number(boosted(0.035)('ignition.boost_limit').value);
		expect(limit).toBeGreaterThan(10 * psi);
		expect(limit).toBeLessThan(15 * psi);
	});

	test('0.020 in still fires above 20 psi', () => {
		expect(boosted(0.02)('ignition.boost_limit').value).toBeGreaterThan(20 * psi);
	});
});

describe('a 4.9 to 5.0 litre V8, VE 85 to 90 %, 5200 to 5500 rpm, 20 to 21 psi, intercooled', () => {
	const corners = [4.9, 5].flatMap(litres =>
		[85, 90].flatMap(filling =>
			[5200, 5500].flatMap(rpm => [20, 21].map(boost => [litres, filling, rpm, boost] as const)),
		),
	);

	test.each(corners)('of %d litres at %d %%, %d rpm and %d psi makes 450 to 560 hp', (litres, filling, rpm, boost) => {
		const q = solved(
			sheetOf({
				'engine.displacement_stated': num(litres, 'L'),
				'engine.volumetric_efficiency': num(filling, '%'),
				'engine.peak_rpm': num(rpm, 'rpm'),
				'fuel.kind': is('petrol'),
				'boost.kind': is('turbocharger'),
				'boost.intercooler': is('air-to-air'),
				'boost.target': num(boost, 'psi'),
			}),
		);
		const power = Number(q('engine.power').value) / horsepower;
		expect(power).toBeGreaterThan(450);
		expect(power).toBeLessThan(560);
	});
});

test('a meter fed so that it swings to 8 V needs a scaler of 8 V in for the 5 V of the controller', () => {
	const curve = (top: number) =>
		num(
			[
				[1, 20],
				[3, 0.2 * top],
				[5, 0.5 * top],
				[8, top],
			],
			['V', 'kg/h'],
		);
	const sheet = (top: number) => ({
		...engine,
		'boost.kind': is('none'),
		'engine.peak_rpm': num(5500, 'rpm'),
		'sensors.meter_kind': is('full-bore'),
		'sensors.meter_scaler': is('none'),
		'sensors.meter_curve': curve(top),
	});
	const air = Number(solved(sheetOf(sheet(2000)))('engine.air_flow').value) * 3600;
	// The engine's air with the headroom of 5 % on top is what the meter shows at 8 V.
	const q = solved(sheetOf(sheet(1.05 * air)));
	expect(q('sensors.scaler_needed').value).toBeCloseTo(8, 6);
	expect(q('sensors.meter_headroom').value).toBeLessThan(0);
	const fitted = solved(
		sheetOf({ ...sheet(1.05 * air), 'sensors.meter_scaler': is('fitted'), 'sensors.meter_scaler_full': num(8, 'V') }),
	);
	expect(fitted('sensors.meter_headroom').value).toBeCloseTo(0.05, 6);
});

test('the gap limit is where the margin is gone', () => {
	const build = {
		...engine,
		'boost.kind': is('turbocharger'),
		'boost.intercooler': is('air-to-air'),
		'boost.target': num(12, 'psi'),
	};
	const limit = Number(solved(sheetOf({ ...build, 'ignition.gap': num(0.03, 'in') }))('ignition.gap_limit').value);
	const there = solved(sheetOf({ ...build, 'ignition.gap': num(limit / inch, 'in') }));
	expect(there('ignition.spark_margin').value).toBeCloseTo(0, 6);
});
