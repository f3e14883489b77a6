import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../support/model.ts';
import { close, inch, is, notKnown, num, poundHour, psi, sheetOf, solved } from '../by-hand.ts';

const q = (answers: Parameters<typeof sheetOf>[0]) => solved(sheetOf(answers, buildSheet('boosted')));

describe('displacement', () => {
	const stated = { 'engine.displacement_stated': num(302, 'cu in') };

	test('is measured where bore and stroke are, whatever was stated', () => {
		const both = { ...stated, 'engine.bore': num(4, 'in'), 'engine.stroke': num(3, 'in') };
		close(q(both)('engine.displacement').value, 2 * Math.PI * 4 * 4 * 3 * inch ** 3, 'displacement');
	});

	test('is as stated where one of them is not known, and then needs neither', () => {
		const without = q({ ...stated, 'engine.bore': notKnown });
		close(without('engine.displacement').value, 302 * inch ** 3, 'displacement');
		expect(without('engine.displacement_from_bore').missing).toEqual(['engine.bore']);
	});

	test('lacks bore and stroke where nothing is stated', () => {
		const nothing = { 'engine.displacement_stated': undefined, 'engine.bore': undefined, 'engine.stroke': undefined };
		expect(q(nothing)('engine.displacement').missing).toEqual(['engine.bore', 'engine.stroke']);
	});
});

describe('ratio', () => {
	const volumes = {
		'engine.bore': num(4, 'in'),
		'engine.stroke': num(3.5, 'in'),
		'engine.chamber_volume': num(60, 'cc'),
		'engine.piston_volume': num(6, 'cc'),
		'engine.gasket_thickness': num(0.04, 'in'),
		'engine.gasket_bore': num(4.1, 'in'),
		'engine.deck_clearance': num(0.01, 'in'),
	};
	const disc = (bore: number, height: number) => (Math.PI / 4) * bore ** 2 * height * inch ** 3 * 1e6;
	const clearance = 66 + disc(4.1, 0.04) + disc(4, 0.01);
	const byVolumes = 1 + disc(4, 3.5) / clearance;

	test('from volumes is swept and clearance over clearance', () => {
		close(q(volumes)('engine.ratio_from_volumes').value, byVolumes, 'ratio');
		const dome = q({ ...volumes, 'engine.piston_volume': num(-6, 'cc') });
		close(dome('engine.ratio_from_volumes').value, 1 + disc(4, 3.5) / (clearance - 12), 'with a dome');
	});

	test('is as answered, and by the volumes only where nothing was answered', () => {
		expect(q({ ...volumes, 'engine.compression_ratio': num(9.1) })('engine.static_ratio').value).toBe(9.1);
		close(q({ ...volumes, 'engine.compression_ratio': undefined })('engine.static_ratio').value, byVolumes, 'ratio');
	});

	test('lacks the ratio itself, not seven volumes, where neither is there', () => {
		const neither = { 'engine.compression_ratio': undefined, 'engine.chamber_volume': undefined };
		expect(q(neither)('engine.static_ratio').missing).toEqual(['engine.compression_ratio']);
	});

	test('that the volumes make impossible is said to be wrong, not guessed', () => {
		const filled = q({ ...volumes, 'engine.chamber_volume': num(20, 'cc'), 'engine.piston_volume': num(-40, 'cc') });
		expect(filled('engine.ratio_from_volumes')).toMatchObject({
			value: undefined,
			broken: expect.stringContaining('volume at top dead center'),
		});
	});
});

describe('ring gap', () => {
	test.each([
		[{ 'boost.kind': is('none'), 'build.use': is('street') }, 0.0045],
		[{ 'boost.kind': is('none'), 'build.use': is('circuit') }, 0.005],
		[{ 'boost.kind': is('none'), 'build.use': is('tow') }, 0.005],
		[{ 'boost.target': num(8, 'psi') }, 0.006],
		[{ 'boost.target': num(12, 'psi') }, 0.006],
		[{ 'boost.target': num(12.1, 'psi') }, 0.007],
	])('%j needs %d of the bore', (answers, share) => {
		close(q({ 'engine.bore': num(4, 'in'), ...answers })('engine.ring_gap_needed').value, 4 * inch * share, 'gap');
	});
});

describe('peak torque', () => {
	const poundFoot = 4.4482216152605 * 0.3048;
	const measured = num(
		[
			[2500, 390],
			[3600, 450],
			[5400, 380],
		],
		['rpm', 'lb-ft'],
	);

	test("is the highest point of the engine's own dyno curve, and without one the usual rise over torque at best power", () => {
		close(q({ 'engine.dyno_curve': measured })('engine.peak_torque').value, 450 * poundFoot, 'measured');
		const none = q({ 'engine.dyno_curve': notKnown });
		close(none('engine.peak_torque').value, 1.15 * Number(none('engine.torque').value), 'usual rise');
		const unboosted = solved(sheetOf({ 'engine.dyno_curve': measured }, buildSheet('unboosted')));
		close(unboosted('engine.peak_torque').value, 450 * poundFoot, 'unboosted');
		expect(unboosted('engine.peak_torque').assumed).toEqual([]);
	});

	test('goes with boost in a limit as torque at best power does: by hand, clutch and transmission give out there', () => {
		const all = q({ 'engine.dyno_curve': measured, 'driveline.clutch_torque': num(500, 'lb-ft') });
		const limit = Number(all('driveline.clutch_boost_limit').value);
		const there = q({ 'boost.target': num(limit / psi, 'psi') });
		const grown = Number(there('engine.torque').value) / Number(all('engine.torque').value);
		close(grown, 500 / 450, 'torque has grown by what the clutch has to spare', 1e-4);
	});
});

test('idle air is 3.9 kg/h a liter, and the idle pulse burns it at lambda 1', () => {
	const all = q({
		'fuel.kind': is('petrol'),
		'fuel.reference': is('manifold'),
		'fuel.pressure': num(43.5, 'psi'),
		'injectors.count': is(8),
		'injectors.rated_flow': num(42, 'lb/h'),
		'injectors.rated_pressure': num(43.5, 'psi'),
		'injectors.dead_time': num(0.95, 'ms'),
	});
	const air = (3.9 / 3600) * Number(all('engine.displacement').value) * 1000;
	close(all('engine.idle_air_flow').value, air, 'idle air');
	const open = ((air / 14.7) * (120 / 750)) / 8 / (42 * poundHour);
	close(all('injectors.idle_pulse_width').value, open + 0.95e-3, 'idle pulse');
});

test('oil wants 10 psi a 1000 rpm at 3000, and 6 psi at least', () => {
	close(q({})('engine.oil_pressure_needed').value, 30 * psi, 'at 3000');
	close(q({})('engine.oil_pressure_needed_idle').value, 6 * psi, 'at idle');
});
