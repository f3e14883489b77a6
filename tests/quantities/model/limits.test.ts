import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../src/sheet/sheet.ts';
import { buildSheet } from '../../support/model.ts';
import { close, is, num, psi, sheetOf, solved } from '../by-hand.ts';

type Answers = Readonly<Record<string, Answer>>;

// Each limit, found by the model as a root, is put back as the answer that it varies: then what it watches must be where it
// should, and short of it a little before. The whole sheet is solved anew for that.

const boosted = (answers: Answers) => solved(sheetOf(answers, buildSheet('boosted')));
const unboosted = (answers: Answers) => solved(sheetOf(answers, buildSheet('unboosted')));

/** What is watched, at a limit and at a part of it. */
function around(
	of: typeof boosted,
	answers: Answers,
	[limit, varied, watched]: readonly [limit: string, varied: string, watched: string],
	unit: readonly [name: string, size: number],
): { readonly limit: number; readonly at: number; readonly before: number } {
	const found = Number(of(answers)(limit).value);
	const watch = (value: number) => Number(of({ ...answers, [varied]: num(value / unit[1], unit[0]) })(watched).value);
	return { limit: found, at: watch(found), before: watch(0.97 * found) };
}

describe('limits of boost', () => {
	test.each([
		[
			'boost.compressor_boost_limit',
			'boost.compressor_flow_corrected',
			0.36,
			{ 'boost.compressor_choke': num(0.36 * 60, 'kg/min') },
		],
		['sensors.meter_spare_boost_limit', 'sensors.meter_headroom', 0.05, {}],
		['fuel.pump_spare_boost_limit', 'fuel.pump_margin', 0.15, {}],
		['ignition.spare_boost_limit', 'ignition.spark_margin', 0.05, {}],
		['engine.head_boost_limit', 'engine.head_clamp_ratio', 1.3, {}],
		['boost.charge_temp_boost_limit', 'boost.charge_temp', 353.15, {}],
		['fuel.rail_boost_limit', 'fuel.rail_sag', 4 * psi, {}],
		['engine.block_boost_limit', 'engine.peak_pressure', 95e5, { 'engine.block': is('light') }],
		['engine.piston_boost_limit', 'engine.peak_pressure', 70e5, { 'engine.pistons': is('cast') }],
		['engine.gasket_boost_limit', 'engine.peak_pressure', 80e5, { 'engine.head_gasket': is('composite') }],
		['engine.rod_boost_limit', 'engine.peak_pressure', 100e5, { 'engine.rods': is('as-built') }],
		['engine.knock_boost_limit_high', 'engine.knock_integral_low', 1, {}],
		['engine.knock_boost_limit_low', 'engine.knock_integral_high', 1, {}],
	] as const)('%s: there %s is %d', (limit, watched, wanted, answers) => {
		const { at, before } = around(boosted, answers, [limit, 'boost.target', watched], ['psi', psi]);
		close(at, wanted, watched, 5e-3);
		expect(Math.abs(before - wanted)).toBeGreaterThan(Math.abs(at - wanted));
	});

	test('the air meter: there nothing of its flow is left', () => {
		const names = ['sensors.meter_boost_limit', 'boost.target', 'sensors.meter_headroom'] as const;
		const { at, before } = around(boosted, {}, names, ['psi', psi]);
		expect(Math.abs(at)).toBeLessThan(2e-3);
		expect(before).toBeGreaterThan(5e-3);
	});

	test('the gap that fires: there the voltage needed is what the coil has', () => {
		const { at } = around(
			boosted,
			{},
			['ignition.gap_fires', 'ignition.gap', 'ignition.required_voltage'],
			['mm', 1e-3],
		);
		close(at, Number(boosted({})('ignition.capacity').value), 'volts', 2e-3);
	});

	test('the advance that knocks: there the integral is 1', () => {
		const { at } = around(
			boosted,
			{},
			['engine.knock_limited_advance', 'ignition.full_load_advance', 'engine.knock_integral'],
			['deg', 1],
		);
		close(at, 1, 'integral', 5e-3);
	});

	test('torque at the target is torque as long as the target is the answer', () => {
		const q = boosted({});
		expect(q('engine.torque_at_target').value).toBe(q('engine.torque').value);
	});
});

describe('limits of engine speed, unboosted', () => {
	test.each([
		['sensors.meter_speed_limit', 'sensors.meter_headroom', {}],
		['fuel.pump_speed_limit', 'fuel.pump_margin', { 'fuel.pump_flow': num(30, 'gal/h') }],
	] as const)('%s: there %s is 0', (limit, watched, answers) => {
		const { limit: found, at, before } = around(unboosted, answers, [limit, 'engine.peak_rpm', watched], ['rpm', 1]);
		expect(found).toBeGreaterThan(3000);
		expect(Math.abs(at)).toBeLessThan(2e-3);
		expect(before).toBeGreaterThan(0.01);
	});

	test('pistons: two strokes a turn', () => {
		const q = unboosted({ 'engine.pistons': is('forged') });
		close(q('engine.piston_speed_limit').value, (25 * 30) / Number(q('engine.stroke_used').value), 'redline');
	});

	test('driveshaft: in proportion, up to three quarters of its whip speed', () => {
		const q = unboosted({ 'engine.redline': num(5000, 'rpm') });
		const [at, most] = ['driveline.shaft_speed_at_redline', 'driveline.shaft_critical_speed'].map(id =>
			Number(q(id).value),
		);
		const wanted = (5000 * 0.75 * most!) / at!;
		close(q('driveline.shaft_speed_limit').value, Math.min(10000, wanted), 'redline');
	});
});
