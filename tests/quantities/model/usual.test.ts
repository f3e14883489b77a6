import { expect, test } from 'vitest';
import { quantities } from '../../../src/quantities/all.ts';
import { buildSheet } from '../../support/model.ts';
import { fahrenheit, num, psi, sheetOf, solved } from '../by-hand.ts';

// What is taken where nobody answers and how wide an estimate is left, as the trade says them: common practice, no source.

const usual: Readonly<Record<string, readonly [value: number, either: number]>> = {
	'boost.charge_temp_most': [fahrenheit(176), 18 / 1.8],
	// 10 and 5 hPa, some 4 and 2 in of water.
	'boost.inlet_loss': [10 * 100, 5 * 100],
	'boost.usual_back_pressure_ratio': [3 / 2, 1 / 2],
	'boost.usual_surge_share': [1 / 2, 12 / 100],
	'driveline.front_weight_share': [55 / 100, 4 / 100],
	// Shigley: lubricated 0.18, 30 % of spread.
	'engine.fastener_friction': [18 / 100, (18 / 100) * (30 / 100)],
	// Gauge: 63 kPa, or 18.6 in of mercury, under the air of sea level.
	'engine.idle_manifold_pressure': [101325 - 63325, 80 * 100],
	'engine.idle_speed': [12.5 * 60, 100],
	'engine.torque_rise': [115 / 100, 5 / 100],
	'engine.valvetrain_mass': [290e-3, 50e-3],
	'fuel.pump_fall': [0.8 / 100, (1.2 - 0.5) / 200],
	'fuel.pump_voltage_exponent': [4 / 2, (2.5 - 1.5) / 2],
	'fuel.usual_elbows': [4, 2],
	'fuel.usual_lambda_unboosted': [87 / 100, 3 / 100],
	'fuel.usual_line_loss': [3 * psi, 2 * psi],
	'fuel.usual_pump_voltage': [13.5 - 0.7, 6 / 10],
};

test('every usual value of the model, and how far it may be off', () => {
	const found = quantities.flatMap(q => ('value' in q ? [[q.id, [q.value, q.spread]] as const] : []));
	expect(found.map(([id]) => id).sort()).toEqual(Object.keys(usual).sort());
	for (const [id, pair] of found) {
		expect(pair[0], id).toBeCloseTo(usual[id]![0], 1);
		for (const index of [0, 1] as const) expect(pair[index] / usual[id]![index], id).toBeCloseTo(1, 2);
	}
});

/** Ends of bands, in hundredths of the figure. */
const bands: Readonly<Record<string, readonly [least: number, most: number]>> = {
	// Up to 5 % of a hot humid day's air is vapor.
	'air.dry_share': [95, 100],
	'boost.bypass_share': [70, 130],
	// A poppet valve passes 0.5 to 0.7 of an ideal hole.
	'boost.bypass_valve_flow': [(5 / 6) * 100 - 0.33, (7 / 6) * 100 + 0.33],
	'boost.intercooler_loss_at_power': [80, 120],
	'boost.surge_margin': [90, 110],
	'cooling.heat_to_coolant': [(17 / 25) * 100, (30 / 25) * 100],
	'driveline.disc_heating': [80, 125],
	'driveline.pressure_cable_pull': [95, 105],
	'driveline.stall_time': [60, 150],
	'driveline.tire_grip_torque': [75, 125],
	'driveline.towing_heat': [60, 150],
	'engine.air_efficiency': [95, 120],
	'engine.block_pressure_most': [85, 115],
	'engine.cranking_pressure_expected': [90, 111],
	// A fine pitch has 13 % more than a coarse one.
	'engine.fastener_area': [100, 113],
	'engine.gasket_pressure_most': [90, 110],
	// 3.9 kg/h a liter, 1.2 either way.
	'engine.idle_air_flow': [(2.7 / 3.9) * 100, (5.1 / 3.9) * 100],
	'engine.knock_integral': [60, 160],
	// What the cylinder model itself leaves open.
	'engine.peak_pressure': [85, 116],
	'engine.piston_pressure_most': [90, 110],
	'engine.rod_pressure_most': [85, 115],
	'engine.valve_float_speed': [90, 115],
	'fuel.cruise_flow': [80, 135],
	// Untried coils, kV.
	'ignition.direct_coil': [(25.6 / 27.5) * 100, (29.7 / 27.5) * 100],
	'ignition.distributor_coil': [(22 / 27.5) * 100, (29.7 / 27.5) * 100],
};

test('every band of an estimate', () => {
	const found = Object.fromEntries(
		quantities.flatMap(q => ('band' in q && q.band ? [[q.id, q.band.map(end => Math.round(end * 1000) / 10)]] : [])),
	);
	const rounded = Object.entries(bands).map(([id, ends]) => [id, ends.map(end => Math.round(end * 10) / 10)]);
	expect(found).toMatchObject(Object.fromEntries(rounded));
	expect(Object.keys(found).filter(id => !(id in bands))).toEqual([]);
});

/** What a quantity can come to by what it is; anything else is 0 or more. */
const kinds: readonly (readonly [range: readonly [number | null, number | null], ids: string])[] = [
	[
		[0, 1], // a share of a whole
		'air.dry_share boost.bypass_share charging.state_of_charge engine.air_efficiency engine.compression_low_under engine.compression_spread engine.leakdown_spread fuel.ethanol_share',
	],
	[
		[-1, null], // what is over, of what is needed: at worst nothing is there
		'boost.bypass_valve_margin boost.surge_margin boost.wastegate_margin driveline.clutch_margin driveline.gearbox_margin engine.wet_gain fuel.pump_margin ignition.spark_margin injectors.fuel_error sensors.map_margin sensors.meter_headroom sensors.speed_error',
	],
	[
		[1, null], // a compression ratio
		'engine.effective_compression_ratio engine.ratio_from_volumes engine.static_ratio',
	],
	[
		[null, null], // a difference
		'charging.balance charging.balance_idle engine.coil_bind_clearance engine.wet_recovery_lowest fuel.idle_pressure_expected harness.unlisted_pins injectors.pressure_across',
	],
	[[0, 45], 'driveline.joint_angle_difference'],
	// From bottom to the exhaust valve's opening.
	[[-180, 120], 'engine.peak_pressure_angle'],
	// 40 psi, and as far as limits are looked for.
	[[0, 40], 'boost.lowest_limit boost.most'],
];

test('every range that is not 0 or more', () => {
	const found = quantities.flatMap(q => ('range' in q && q.range ? [[q.id, q.range] as const] : []));
	const wanted = new Map(kinds.flatMap(([range, ids]) => ids.split(' ').map(id => [id, range] as const)));
	expect(found.filter(([id]) => !wanted.has(id))).toEqual([]);
	expect(found).toHaveLength(wanted.size);
	for (const [id, range] of found) {
		const inPsi =
			id.startsWith('boost.lowest') || id === 'boost.most' ? range.map(end => Math.round(end! / psi)) : range;
		expect(inPsi, id).toEqual(wanted.get(id));
	}
});

test('what rests on common practice alone is said to be assumed, until somebody proves better', () => {
	const q = solved(buildSheet('boosted'));
	expect(q('engine.power').assumed).toContain('engine.air_efficiency');
	expect(q('sensors.meter_voltage_idle').assumed).toContain('engine.idle_air_flow');
	// Where a question asks for it, under the name of that.
	const unmapped = solved(sheetOf({ 'boost.compressor_surge': undefined }, buildSheet('boosted')));
	expect(unmapped('boost.bypass_valve_needed').assumed).toContain('boost.compressor_surge');
	const clean = { 'ignition.proven_gap': num(0.04, 'in'), 'ignition.proven_boost': num(14, 'psi') };
	const proven = solved(sheetOf(clean, buildSheet('boosted')));
	expect(proven('ignition.capacity').value).toBeGreaterThan(27_500);
	expect(proven('ignition.capacity').assumed).not.toContain('ignition.capacity');
});
