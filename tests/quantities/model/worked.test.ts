import { describe, expect, test } from 'vitest';
import type { Outcome } from '../../../src/expressions/tree.ts';
import { close, fahrenheit, figure, foot, horsepower, inch, poundFoot, psi } from '../by-hand.ts';

// Quantities each worked out on paper, from figures for what they read: no formula of the physics room is used here.

type Row = readonly [id: string, given: Readonly<Record<string, Outcome>>, wanted: Outcome];

function worked(subject: string, rows: readonly Row[]): void {
	describe(subject, () => {
		test.each(rows)('%s of %j', (id, given, wanted) => {
			const found = figure(id, given);
			if (typeof wanted === 'number' && wanted !== 0) close(found, wanted, id, 1e-6);
			else expect(found).toBe(wanted);
		});
	});
}

/** `1 6, 5 3` as [[1, 6], [5, 3]]. */
const pairsOf = (text: string) => text.split(', ').map(pair => pair.split(' ').map(Number));
const degrees = (angle: number) => (angle * Math.PI) / 180;
/** Copper of a round wire, m2, by its diameter in thousandths of an inch: ASTM B258 gives 14 AWG 64.1 and 10 AWG 101.9. */
const mils = (diameter: number) => (Math.PI / 4) * (diameter * 1e-3 * inch) ** 2;
const [awg14, awg10, awg4] = [mils(64.1), mils(101.9), mils(204.4)];

worked('wires and fuses', [
	// 33 CFR 183.425 Table 5, 105 degC insulation: 14 AWG 35 A, 10 AWG 60 A, 4 AWG 160 A; 0.85 in an engine space.
	['fuel.pump_fuse_most', { 'fuel.pump_wire_gauge': awg14 }, 0.85 * 35],
	['fuel.pump_fuse_most', { 'fuel.pump_wire_gauge': awg10 }, 0.85 * 60],
	['fuel.pump_fuse_most', { 'fuel.pump_wire_gauge': mils(25.3) }, 0],
	['charging.cable_fuse_most', { 'charging.cable_gauge': awg4 }, 0.85 * 160],
	// Ratings that are sold: 25 A under 29.75, 125 A under 136 (ISO 8820).
	['fuel.pump_fuse_sold', { 'fuel.pump_fuse_most': 29.75 }, 25],
	['charging.cable_fuse_sold', { 'charging.cable_fuse_most': 136 }, 125],
	// FAA AC 43.13-1B, Tables 11-3 and 11-9.
	['fuel.pump_fuse_chart', { 'fuel.pump_wire_gauge': awg14 }, 15],
	['fuel.pump_fuse_chart', { 'fuel.pump_wire_gauge': mils(10) }, null],
	['fuel.pump_wire_bundled', { 'fuel.pump_wire_gauge': awg10 }, 17],
	['fuel.pump_wire_bundled', { 'fuel.pump_wire_gauge': mils(10) }, null],
	// Copper has 1/58 ohm mm2/m at 20 degC and 0.393 % a kelvin more; 0.5 V out and back at 10 A, strands 2 % longer.
	[
		'fuel.pump_wire_longest',
		{ 'fuel.pump_current': 10, 'fuel.pump_wire_gauge': 2e-6 },
		0.5 / (2 * 10 * 1.02 * (1 + 0.00393 * 40) * (1 / 58 / 2)),
	],
	[
		'charging.load_total',
		{
			'charging.loads': [
				['fan', 20],
				['pump', 12.5],
				['lamps', 9],
			],
		},
		41.5,
	],
	['charging.balance', { 'charging.alternator': 95, 'charging.load_total': 41.5 }, 53.5],
	['charging.balance_idle', { 'charging.alternator': 95, 'charging.load_total': 41.5 }, 6],
]);

// Rated 35 A and 60 A: what the wire allows, and what the load wants, each side of the edge.
worked('whether wire and fuse fit', [
	['fuel.pump_wire_ok', { 'fuel.pump_fuse': 25, 'fuel.pump_wire_gauge': awg14, 'fuel.pump_current': 20 }, true],
	['fuel.pump_wire_ok', { 'fuel.pump_fuse': 30, 'fuel.pump_wire_gauge': awg14, 'fuel.pump_current': 20 }, false],
	['fuel.pump_wire_ok', { 'fuel.pump_fuse': 25, 'fuel.pump_wire_gauge': awg14, 'fuel.pump_current': 20.1 }, false],
	['charging.cable_ok', { 'charging.cable_fuse': 125, 'charging.cable_gauge': awg4, 'charging.alternator': 100 }, true],
	[
		'charging.cable_ok',
		{ 'charging.cable_fuse': 150, 'charging.cable_gauge': awg4, 'charging.alternator': 100 },
		false,
	],
	[
		'charging.cable_ok',
		{ 'charging.cable_fuse': 125, 'charging.cable_gauge': awg4, 'charging.alternator': 101 },
		false,
	],
	['cooling.fan_wire_ok', { 'cooling.fan_current': 24, 'cooling.fan_fuse': 30 }, true],
	['cooling.fan_wire_ok', { 'cooling.fan_current': 24.1, 'cooling.fan_fuse': 30 }, false],
	[
		'charging.cable_drop',
		{ 'charging.alternator': 100, 'charging.cable_gauge': 20e-6, 'charging.cable_length': 2 },
		100 * 2 * 2 * 1.02 * (1 + 0.00393 * 40) * (1 / 58 / 20),
	],
	// The usual table: 12.65 V full, 12.24 V half.
	['charging.state_of_charge', { 'charging.battery_rest': 12.65 }, 1],
	['charging.state_of_charge', { 'charging.battery_rest': 12.24 }, 0.5],
]);

worked('air', [
	// From logs alone: tests of the audit work them out, a sheet by itself has none.
	['boost.next_step', {}, null],
	['boost.next_cut', {}, null],
	['air.dry_share', {}, 1],
	// Unboosted, the air under the hood is 18 degF warmer than outside.
	[
		'boost.charge_temp',
		{
			'boost.kind': 'none',
			'build.hot_day': fahrenheit(95),
			'boost.compressor_outlet_temp': null,
			'boost.intercooler': null,
			'boost.intercooler_effectiveness': null,
		},
		fahrenheit(113),
	],
	// Without an intercooler none of its loss counts, whatever was said of it.
	[
		'boost.pressure_ratio',
		{
			'boost.kind': 'turbocharger',
			'boost.manifold_pressure': 180e3,
			'boost.intercooler': 'none',
			'boost.intercooler_loss': 9e3,
			'air.ambient_pressure': 101e3,
			'boost.inlet_loss': 1e3,
		},
		1.8,
	],
	// Nothing is compressed: it leaves as it came.
	[
		'boost.compressor_outlet_temp',
		{ 'build.hot_day': 310, 'boost.pressure_ratio': 0.9, 'boost.compressor_efficiency': 0.7 },
		310,
	],
	['boost.back_pressure_ratio', { 'boost.turbine_back_pressure': 15 * psi, 'boost.target': 10 * psi }, 1.5],
	['boost.back_pressure_ratio', { 'boost.turbine_back_pressure': 15 * psi, 'boost.target': 0 }, null],
	// Half the speed, half the flow: 0.30 kg/s becomes 0.18 at 3300 of 5500 rpm, a fifth over a surge flow of 0.15.
	[
		'boost.surge_margin',
		{
			'boost.compressor_flow_corrected': 0.3,
			'boost.compressor_surge': 0.15,
			'boost.full_rpm': 3300,
			'engine.peak_rpm': 5500,
		},
		0.2,
	],
	// Loss goes with the square of the flow: 1 psi at 200 hp is 2.25 psi at 300.
	[
		'boost.intercooler_loss_at_power',
		{
			'boost.intercooler_loss': psi,
			'boost.intercooler_loss_power': 200 * horsepower,
			'engine.power': 300 * horsepower,
		},
		2.25 * psi,
	],
]);

/** Exhaust at 1150 K: 1.33, 287 J/kgK and 1150 J/kgK; 10 kPa in the pipe behind the turbine. */
const before = 220e3;

worked('turbine and wastegate', [
	// The pressures part by more than 1.85: choked. Heywood, appendix C; a bore of 50 mm, discharge 0.7.
	[
		'boost.wastegate_share',
		{
			'boost.wastegate_bore': 0.05,
			'boost.turbine_inlet_pressure': before,
			'air.ambient_pressure': 100e3,
			'engine.air_flow': 0.3,
		},
		(0.7 * Math.PI * 0.025 ** 2 * before * Math.sqrt((1.33 / (287 * 1150)) * (2 / 2.33) ** (2.33 / 0.33))) /
			(1.07 * 0.3),
	],
	[
		'boost.wastegate_share',
		{
			'boost.wastegate_bore': 0.05,
			'boost.turbine_inlet_pressure': 109e3,
			'air.ambient_pressure': 100e3,
			'engine.air_flow': 0.3,
		},
		null,
	],
	[
		'boost.bypass_share',
		{
			'boost.compressor_outlet_temp': 380,
			'build.hot_day': 310,
			'boost.turbine_inlet_pressure': before,
			'air.ambient_pressure': 100e3,
		},
		// Compressor 1005 J/kgK x 70 K; turbine 0.7 of what the gas gives from 2.2 to 1.1 bar; fuel adds 7 % to the mass.
		1 - (1005 * 70) / (1.07 * 0.7 * 1150 * 1150 * (1 - 0.5 ** (0.33 / 1.33))),
	],
	[
		'boost.bypass_share',
		{
			'boost.compressor_outlet_temp': 310,
			'build.hot_day': 310,
			'boost.turbine_inlet_pressure': before,
			'air.ambient_pressure': 100e3,
		},
		null,
	],
]);

worked('the engine', [
	// Of the moist air 0.96 is dry: 0.9 of 5 L, 50 times a second, at 1.5 kg/m3.
	[
		'engine.air_flow',
		{
			'engine.volumetric_efficiency': 0.9,
			'boost.manifold_density': 1.5,
			'air.dry_share': 0.96,
			'engine.displacement': 0.005,
			'engine.peak_rpm': 6000,
		},
		0.9 * 0.005 * 50 * 1.5 * 0.96,
	],
	// One dead cylinder is a spread; where all are, there is nothing to compare with.
	['engine.compression_spread', { 'engine.compression': [900e3, 0, 950e3, 920e3] }, 0],
	['engine.compression_spread', { 'engine.compression': [0, 0, 0, 0] }, null],
	// Ten studs a bank of four at 40 kN over 80 bar on a disc of 100 mm.
	[
		'engine.head_clamp_ratio',
		{
			'engine.fastener_preload': 40e3,
			'engine.fastener_count': 10,
			'engine.cylinders': 8,
			'engine.gasket_bore': 0.1,
			'engine.peak_pressure': 80e5,
		},
		(40e3 * 2.5) / (80e5 * Math.PI * 0.05 ** 2),
	],
	['engine.oil_pressure_needed_idle', {}, 6 * psi],
	// Ring sheets: thousandths of an inch for each inch of bore. 4 in on the street, in the dirt, on a track, 8 psi and 15 psi.
	...(
		[
			['none', 'street', 18],
			['none', 'off-road', 18],
			['none', 'circuit', 20],
			['turbocharger', 'street', 24, 8 * psi],
			['supercharger', 'street', 28, 15 * psi],
		] as const
	).map(
		([kind, use, thousandths, target = 0]): Row => [
			'engine.ring_gap_needed',
			{ 'engine.bore': 4 * inch, 'boost.kind': kind, 'build.use': use, 'boost.target': target },
			thousandths * 1e-3 * inch,
		],
	),
	['engine.wet_gain', { 'engine.compression': [0, 150], 'engine.compression_wet': [10, 150] }, null],
	// Service manuals: the lowest cylinder at three quarters of the highest, 112.5 for 150.
	['engine.compression_low_under', {}, 112.5 / 150],
	[
		'engine.cranking_pressure_low',
		{ 'air.ambient_pressure': 1e5, 'engine.effective_compression_ratio': 8 },
		1e5 * (2 ** 3.6 - 1),
	],
	// 64 cc chamber, 5 cc dish, a disc of gasket and one of deck.
	[
		'engine.clearance_volume',
		{
			'engine.bore': 4 * inch,
			'engine.stroke_used': 3 * inch,
			'engine.chamber_volume': 64e-6,
			'engine.piston_volume': 5e-6,
			'engine.gasket_thickness': 0.04 * inch,
			'engine.gasket_bore': 4.1 * inch,
			'engine.deck_clearance': 0.01 * inch,
		},
		69e-6 + (Math.PI / 4) * (4.1 ** 2 * 0.04 + 4 ** 2 * 0.01) * inch ** 3,
	],
	[
		'engine.stroke_used',
		{
			'engine.stroke': undefined,
			'engine.bore': 4 * inch,
			'engine.cylinders': 8,
			'engine.displacement_stated': 302 * inch ** 3,
		},
		(302 / (8 * Math.PI * 4)) * inch,
	],
	[
		'engine.stroke_used',
		{
			'engine.stroke': 3.4 * inch,
			'engine.bore': 4 * inch,
			'engine.cylinders': 8,
			'engine.displacement_stated': 302 * inch ** 3,
		},
		3.4 * inch,
	],
	[
		'engine.coil_bind_clearance',
		{ 'engine.spring_height': 1.8 * inch, 'engine.valve_lift': 0.5 * inch, 'engine.spring_solid_height': 1.2 * inch },
		0.1 * inch,
	],
	// Harmonic lift of 10 mm over 360 deg of crank: one turn of the harmonic a turn of the crank, force = mass x 5 mm x speed^2.
	[
		'engine.valve_float_speed',
		{
			'engine.valve_lift': 0.01,
			'engine.cam_duration': 360,
			'engine.spring_open_force': 0.3 * 0.005 * (5000 * 2 * (Math.PI / 60)) ** 2,
			'engine.valvetrain_mass': 0.3,
		},
		5000,
	],
	['engine.piston_speed_most', { 'engine.pistons': 'forged' }, 25],
	['engine.piston_speed_most', { 'engine.pistons': 'cast' }, 20],
	['engine.piston_speed_most', { 'engine.pistons': 'hypereutectic' }, 20],
]);

// Common practice, in bar.
worked('what parts stand', [
	['engine.piston_pressure_most', { 'engine.pistons': 'cast' }, 70e5],
	['engine.piston_pressure_most', { 'engine.pistons': 'hypereutectic' }, 75e5],
	['engine.piston_pressure_most', { 'engine.pistons': 'forged' }, null],
	['engine.gasket_pressure_most', { 'engine.head_gasket': 'composite' }, 80e5],
	['engine.gasket_pressure_most', { 'engine.head_gasket': 'steel' }, null],
	['engine.rod_pressure_most', { 'engine.rods': 'as-built' }, 100e5],
	['engine.rod_pressure_most', { 'engine.rods': 'racing' }, null],
	['engine.block_pressure_most', { 'engine.block': 'light' }, 95e5],
	['engine.block_pressure_most', { 'engine.block': 'heavy' }, 115e5],
	['engine.block_pressure_most', { 'engine.block': 'racing' }, null],
]);

// Tensile stress area of ISO 898-1: pi/4 (diameter - 0.9382 pitch)^2; 7/16 in has 14 threads an inch coarse.
const area716 = (Math.PI / 4) * (7 / 16 - 0.9743 / 14) ** 2 * inch ** 2;

describe('head fasteners', () => {
	const clamped = (kind: string) => ({
		'engine.head_fasteners': kind,
		'engine.fastener_size': (7 / 16) * inch,
		'engine.fastener_area': area716,
		'engine.fastener_torque': 70 * poundFoot,
		'engine.fastener_friction': 0.18,
	});
	// ASME B1.1 prints 0.1063 sq in for 7/16-14.
	test('a 7/16 in thread has the stress area of the table', () =>
		close(
			figure('engine.fastener_area', { 'engine.fastener_size': (7 / 16) * inch }),
			0.1063 * inch ** 2,
			'area',
			1e-3,
		));

	test.each(['studs', 'reusable-bolts'])('%s pull by torque over K and diameter', kind =>
		close(figure('engine.fastener_preload', clamped(kind)), (70 * poundFoot) / (0.18 * (7 / 16) * inch), 'preload'),
	);

	test('stretch bolts pull at their proof stress, three quarters of it when used a second time', () => {
		close(figure('engine.fastener_preload', clamped('stretch-new')), 830e6 * area716, 'new');
		close(figure('engine.fastener_preload', clamped('stretch-reused')), 0.75 * 830e6 * area716, 'used');
	});
});

worked('fuel', [
	[
		'injectors.pressure_across',
		{ 'fuel.rail_set_point': 40 * psi, 'boost.kind': 'none', 'boost.target': null },
		40 * psi,
	],
	[
		'injectors.pressure_across',
		{ 'fuel.rail_set_point': 40 * psi, 'boost.kind': 'turbocharger', 'boost.target': 8 * psi },
		32 * psi,
	],
	['fuel.ethanol_share', { 'fuel.kind': 'petrol', 'fuel.ethanol': undefined }, 0],
	['fuel.ethanol_share', { 'fuel.kind': 'petrol-e10', 'fuel.ethanol': undefined }, 0.1],
	['fuel.ethanol_share', { 'fuel.kind': 'e85', 'fuel.ethanol': undefined }, 0.85],
	['fuel.ethanol_share', { 'fuel.kind': 'e85', 'fuel.ethanol': 0.7 }, 0.7],
	['fuel.rail_sag', { 'fuel.rail_set_point': 50 * psi, 'fuel.rail_pressure_under_flow': 46 * psi }, 4 * psi],
	['fuel.rail_sag', { 'fuel.rail_set_point': 50 * psi, 'fuel.rail_pressure_under_flow': 51 * psi }, 0],
	// A four-stroke injects once in two turns: 20 ms at 6000 rpm.
	['injectors.cycle_time', { 'engine.peak_rpm': 6000 }, 0.02],
	['injectors.idle_duty', { 'injectors.idle_pulse_width': 2.4e-3, 'engine.idle_speed': 750 }, 0.015],
	[
		'injectors.idle_pressure_across',
		{
			'fuel.pressure': 39 * psi,
			'fuel.reference': 'atmosphere',
			'air.ambient_pressure': 14.7 * psi,
			'engine.idle_manifold_pressure': 5.7 * psi,
		},
		48 * psi,
	],
	[
		'injectors.idle_pressure_across',
		{
			'fuel.pressure': 39 * psi,
			'fuel.reference': 'manifold',
			'air.ambient_pressure': 14.7 * psi,
			'engine.idle_manifold_pressure': 5.7 * psi,
		},
		39 * psi,
	],
]);

/** A meter whose flow is in proportion to its volts: 0.1 kg/s a volt. */
const meter = {
	'sensors.meter_kind': 'whole',
	'sensors.meter_curve': [0.5, 1, 2, 3, 4, 5].map(volts => [volts, volts / 10]),
	'sensors.meter_pipe_bore': undefined,
	'sensors.meter_curve_bore': undefined,
	'sensors.meter_ceiling': 5,
};

worked('sensors', [
	// 5 % over 0.4 kg/s is 4.2 V.
	['sensors.scaler_needed', { ...meter, 'engine.air_flow': 0.4 }, 4.2],
	['sensors.meter_flow_ceiling', { ...meter, 'sensors.meter_top_volts': 4.5 }, 0.45],
	['sensors.meter_voltage_idle', { ...meter, 'sensors.meter_top_volts': 5, 'engine.idle_air_flow': 0.06 }, 0.6],
	['sensors.meter_voltage_idle', { ...meter, 'sensors.meter_top_volts': 10, 'engine.idle_air_flow': 0.06 }, 0.3],
	// The controller takes a volt for 0.08 kg/s where the meter has 0.1.
	[
		'sensors.load_seen',
		{
			...meter,
			'sensors.meter_curve_loaded': 'old-curve',
			'sensors.controller_curve': [0.5, 1, 2, 3, 4, 5].map(volts => [volts, 0.08 * volts]),
			'sensors.meter_top_volts': 5,
			'engine.air_flow': 0.3,
		},
		0.8,
	],
	[
		'sensors.load_seen',
		{
			...meter,
			'sensors.meter_curve_loaded': 'no-table-for-it',
			'sensors.controller_curve': undefined,
			'sensors.meter_top_volts': 5,
			'engine.air_flow': 0.3,
		},
		null,
	],
	// Nobody says what the old curve is; a curve that matches reads right, whatever else is written down.
	[
		'sensors.load_seen',
		{
			...meter,
			'sensors.meter_curve_loaded': 'old-curve',
			'sensors.controller_curve': undefined,
			'sensors.meter_top_volts': 5,
			'engine.air_flow': 0.3,
		},
		undefined,
	],
	[
		'sensors.load_seen',
		{
			...meter,
			'sensors.meter_curve_loaded': 'matches-meter',
			'sensors.controller_curve': [0.5, 1, 2, 3, 4, 5].map(volts => [volts, 0.08 * volts]),
			'sensors.meter_top_volts': 5,
			'engine.air_flow': 0.3,
		},
		1,
	],
	['sensors.meter', { ...meter, 'sensors.meter_kind': 'none-speed-density' }, null],
	// 10 kPa are left over the highest pressure expected.
	['sensors.map_margin', { 'sensors.map_full_scale': 250e3, 'boost.manifold_pressure': 190e3 }, 0.25],
	['sensors.speed_error', { 'sensors.speed_pulses_sent': 8800, 'sensors.speed_pulses_expected': 8000 }, 0.1],
	[
		'sensors.meter_top_volts',
		{ 'sensors.meter_scaler': 'fitted', 'sensors.meter_scaler_full': 10, 'sensors.meter_ceiling': 5 },
		10,
	],
	[
		'sensors.meter_top_volts',
		{ 'sensors.meter_scaler': 'none', 'sensors.meter_scaler_full': 10, 'sensors.meter_ceiling': 5 },
		5,
	],
	[
		'sensors.controller_volts_peak',
		{ 'sensors.meter_voltage_peak': 7, 'sensors.meter_top_volts': 10, 'sensors.meter_ceiling': 5 },
		3.5,
	],
	[
		'sensors.controller_volts_peak',
		{ 'sensors.meter_voltage_peak': 11, 'sensors.meter_top_volts': 10, 'sensors.meter_ceiling': 5 },
		5,
	],
]);

worked('ignition', [
	// Wider than people set at home: 0.060 in with a distributor, 0.070 in without.
	['ignition.gap_limit', { 'ignition.gap_fires': 2e-3, 'ignition.kind': 'distributor' }, 0.06 * inch],
	['ignition.gap_limit', { 'ignition.gap_fires': 2e-3, 'ignition.kind': 'waste-spark' }, 0.07 * inch],
	['ignition.gap_limit', { 'ignition.gap_fires': 1e-3, 'ignition.kind': 'distributor' }, 1e-3],
	['ignition.points_disagree', { 'ignition.proven_voltage': 26e3, 'ignition.blown_voltage': 25e3 }, true],
	['ignition.points_disagree', { 'ignition.proven_voltage': 25e3, 'ignition.blown_voltage': 26e3 }, false],
	['ignition.points_disagree', { 'ignition.proven_voltage': 26e3, 'ignition.blown_voltage': 26e3 }, false],
	[
		'ignition.usual_capacity',
		{ 'ignition.kind': 'distributor', 'ignition.direct_coil': 27e3, 'ignition.distributor_coil': 24e3 },
		24e3,
	],
	[
		'ignition.usual_capacity',
		{ 'ignition.kind': 'coil-per-pair', 'ignition.direct_coil': 27e3, 'ignition.distributor_coil': 24e3 },
		27e3,
	],
	// Air a third as dense unboosted as at the target makes two thirds of 300 hp boost's work: 200 hp, two steps.
	[
		'ignition.heat_steps_needed',
		{ 'boost.kind': 'turbocharger', 'engine.power': 50 * horsepower, 'boost.density_ratio': 2 },
		0.25,
	],
	[
		'ignition.heat_steps_needed',
		{ 'boost.kind': 'turbocharger', 'engine.power': 300 * horsepower, 'boost.density_ratio': 3 },
		2,
	],
	[
		'ignition.heat_steps_needed',
		{ 'boost.kind': 'none', 'engine.power': undefined, 'boost.density_ratio': undefined },
		0,
	],
	[
		'ignition.wire_resistance_per_length',
		{ 'ignition.wire_resistance': 6000, 'ignition.wire_length': 3 * foot },
		2000 / foot,
	],
	['ignition.shown_clean', { 'ignition.knock_seen': 'clean' }, true],
	['ignition.shown_clean', { 'ignition.knock_seen': 'heard' }, false],
	['ignition.shown_clean', { 'ignition.knock_seen': undefined }, false],
	// Cylinders half of 1-5-4-2-6-3-7-8 apart fire from one coil: 1 and 6, 5 and 3, 4 and 7, 2 and 8.
	...(
		[
			['6 1, 3 5, 7 4, 8 2', true],
			['1 6, 5 3, 4 7, 2 8', true],
			['1 6, 5 3', undefined],
			['1 5', false],
			['5 6', false],
			['6 3', false],
			['1 6, 5 7, 4 3, 2 8', false],
		] as const
	).map(
		([towers, right]): Row => [
			'ignition.towers_are_companions',
			{ 'ignition.companions': pairsOf('1 6, 5 3, 4 7, 2 8'), 'ignition.towers': pairsOf(towers) },
			right,
		],
	),
	['engine.knock_integral_low', { 'engine.knock_integral': 0.5 }, 0.3],
	['engine.knock_integral_high', { 'engine.knock_integral': 0.5 }, 0.8],
	['engine.knock_speed', { 'engine.knock_worst': { integral: 0.7, speed: 3200 } as unknown as Outcome }, 3200],
]);

worked('harness', [
	[
		'harness.unlisted_pins',
		{
			'harness.vehicle_plug': 'adapter',
			'harness.vehicle_plug_pins': 10,
			'harness.gearbox_plug': 'adapter',
			'harness.gearbox_plug_pins': 8,
			'harness.circuits': ['a', 'b', 'c'],
		},
		15,
	],
	[
		'harness.unlisted_pins',
		{
			'harness.vehicle_plug': 'mates',
			'harness.vehicle_plug_pins': 10,
			'harness.gearbox_plug': 'adapter',
			'harness.gearbox_plug_pins': 8,
			'harness.circuits': ['a', 'b', 'c'],
		},
		5,
	],
	[
		'harness.unlisted_pins',
		{
			'harness.vehicle_plug': 'mates',
			'harness.vehicle_plug_pins': 10,
			'harness.gearbox_plug': 'mates',
			'harness.gearbox_plug_pins': 8,
			'harness.circuits': ['a'],
		},
		null,
	],
	[
		'harness.unlisted_pins',
		{
			'harness.vehicle_plug': 'adapter',
			'harness.vehicle_plug_pins': 8,
			'harness.gearbox_plug': 'adapter',
			'harness.gearbox_plug_pins': 8,
			'harness.circuits': ['a'],
		},
		15,
	],
]);

const mph = 0.44704;

/** rpm m2 of a simply supported steel tube, 80 mm with a wall of 2 mm: pi/2 sqrt(E I / (density x area)), in turns a minute. */
const whip = 60 * (Math.PI / 2) * Math.sqrt((205e9 / 7850) * ((0.08 ** 2 + 0.076 ** 2) / 16));

worked('driveline and vehicle', [
	// A shaft shorter than five diameters whips no earlier than one of five: thin steel tube, in proportion to 1 / length^2.
	...[0.3, 0.35, 0.4].map(
		(length): Row => [
			'driveline.shaft_critical_speed',
			{ 'driveline.shaft_length': length, 'driveline.shaft_diameter': 0.08, 'driveline.shaft_wall': 0.002 },
			whip / 0.4 ** 2,
		],
	),
	[
		'driveline.shaft_critical_speed',
		{ 'driveline.shaft_length': 0.8, 'driveline.shaft_diameter': 0.08, 'driveline.shaft_wall': 0.002 },
		whip / 0.8 ** 2,
	],
	['driveline.gearbox_margin', { 'driveline.gearbox_torque': 500, 'engine.peak_torque': 400 }, 0.25],
	['harness.days_to_flat', { 'charging.battery_capacity': 60 * 3600, 'harness.key_off_draw': 0 }, null],
	['harness.days_to_flat', { 'charging.battery_capacity': 60 * 3600, 'harness.key_off_draw': 0.05 }, 25],
	// The usual sum of the trade: mph x gear x axle x 336 / tire diameter in inches.
	[
		'driveline.cruise_speed',
		{ 'driveline.axle_ratio': 3.73, 'driveline.tyre_diameter': 26 * inch, 'driveline.top_gear': 0.7 },
		(65 * 0.7 * 3.73 * ((60 * 5280) / 5280) * ((5280 * 12) / 3600 / Math.PI)) / 26,
	],
	['driveline.joint_angle_difference', { 'driveline.joint_angle_front': 3, 'driveline.joint_angle_rear': -1 }, 2],
	// A lever of 1 in turning 80 deg pulls the chord of that arc.
	['driveline.pressure_cable_pull', { 'driveline.pressure_cable_radius': inch }, 2 * inch * Math.sin(degrees(40))],
	// 300 lb-ft at 2100 rpm: torque x rpm / 5252 is 119.96 hp.
	[
		'driveline.stall_heat',
		{ 'engine.peak_torque': 300 * poundFoot, 'driveline.converter_stall': 2100 },
		((300 * 2100 * 2 * Math.PI) / 33000) * horsepower,
	],
	// 8 kg of fluid, 2100 J/kgK, 50 K: 840 kJ, at 84 kW ten seconds.
	['driveline.stall_time', { 'driveline.stall_heat': 84e3 }, 10],
	// A tenth of what rolling (1.2 %), grade (4 %) and air (half of 1.2 kg/m3 x 2.5 m2) take at 55 mph.
	[
		'driveline.towing_heat',
		{ 'driveline.vehicle_mass': 2000, 'driveline.trailer_mass': 1000 },
		0.1 * 55 * mph * (3000 * 9.80665 * 0.052 + 0.5 * 1.2 * 2.5 * (55 * mph) ** 2),
	],
	// A tire of 1/pi m diameter turns once a m: at 50 m/s 3000 times a minute, the shaft 4 times as often.
	[
		'driveline.shaft_speed_at_highest',
		{ 'driveline.highest_speed': 50, 'driveline.axle_ratio': 4, 'driveline.tyre_diameter': 1 / Math.PI },
		12000,
	],
	[
		'driveline.shaft_limit_speed',
		{ 'driveline.shaft_critical_speed': 16000, 'driveline.axle_ratio': 4, 'driveline.tyre_diameter': 1 / Math.PI },
		50,
	],
	['driveline.shaft_speed_most', { 'driveline.shaft_critical_speed': 8000 }, 6000],
	['driveline.tire_load', { 'driveline.vehicle_mass': 1600, 'driveline.front_weight_share': 0.55 }, 440],
	// A weight of 1500 kg, 65 % on the driven axle, grip 1.1, at half of 26 in.
	[
		'driveline.tire_grip_torque',
		{ 'driveline.vehicle_mass': 1500, 'driveline.tyre_diameter': 26 * inch },
		1500 * 9.80665 * 0.65 * 1.1 * 13 * inch,
	],
	[
		'driveline.clutch_slave_travel',
		{
			'driveline.clutch_master_travel': 0.03,
			'driveline.clutch_master_bore': 0.018,
			'driveline.clutch_slave_bore': 0.0225,
		},
		0.03 * 0.64,
	],
	// 100 lb sank the front by half an inch: 200 lb an inch.
	['build.front_weight_per_inch', { 'build.front_mass_added': 45.359237, 'build.front_sag': 0.5 * inch }, 90.718474],
	['build.front_weight_per_inch', { 'build.front_mass_added': 45.359237, 'build.front_sag': -0.5 * inch }, null],
	['build.front_weight_per_inch', { 'build.front_mass_added': 45.359237, 'build.front_sag': 0 }, null],
	['build.front_weight_per_inch', { 'build.front_mass_added': 0, 'build.front_sag': 0.5 * inch }, null],
	['build.front_weight_per_inch', { 'build.front_mass_added': 1, 'build.front_sag': 2 * inch }, 0.5],
	// UN Regulation 30, km/h.
	...Object.entries({ q: 160, r: 170, s: 180, t: 190, h: 210, v: 240, w: 270, y: 300 }).map(
		([symbol, speed]): Row => ['driveline.tire_speed_most', { 'driveline.tire_speed_symbol': symbol }, speed / 3.6],
	),
]);

// Air chokes in a hole once the pressures part more than 1.893 times.
worked('a bypass valve', [
	[
		'boost.bypass_valve_flow',
		{
			'boost.kind': 'turbocharger',
			'boost.bypass_bore': 0.03,
			'boost.manifold_pressure': 300e3,
			'boost.charge_temp': 330,
			'air.ambient_pressure': 100e3,
		},
		// Choked: p A sqrt(gamma / R T) (2 / 2.4)^3, as (gamma + 1) / (2 (gamma - 1)) is 3.
		0.6 * (Math.PI / 4) * 0.03 ** 2 * 300e3 * Math.sqrt(1.4 / (287.05 * 330)) * (1 / 1.2) ** 3,
	],
	[
		'boost.bypass_valve_flow',
		{
			'boost.kind': 'turbocharger',
			'boost.bypass_bore': 0.03,
			'boost.manifold_pressure': 95e3,
			'boost.charge_temp': 330,
			'air.ambient_pressure': 95e3,
		},
		null,
	],
	['boost.bypass_valve_flow', { 'boost.kind': 'supercharger', 'boost.bypass_bore': 0.03 }, null],
	[
		'boost.bypass_valve_needed',
		{
			'boost.kind': 'turbocharger',
			'boost.compressor_surge': 0.12,
			'boost.compressor_flow_corrected': 0.3,
			'engine.air_flow': 0.28,
		},
		0.112,
	],
	[
		'boost.bypass_valve_needed',
		{
			'boost.kind': 'turbocharger',
			'boost.compressor_surge': undefined,
			'boost.usual_surge_share': 0.45,
			'engine.air_flow': 0.28,
		},
		0.126,
	],
	['boost.bypass_valve_needed', { 'boost.kind': 'supercharger', 'engine.air_flow': 0.28 }, null],
	['boost.bypass_valve_margin', { 'boost.bypass_valve_flow': 0.2, 'boost.bypass_valve_needed': 0.16 }, 0.25],
]);

// 65 mph is 29.0576 m/s; 1.6 bar in 5 L at 2400 rpm is 16 kW; 1 m3 holds 750 kg.
worked('what is in the tank', [
	[
		'fuel.cruise_flow',
		{
			'driveline.vehicle_mass': 1600,
			'driveline.cruise_speed': 2400,
			'engine.displacement': 0.005,
			'fuel.heating_value': 42e6,
		},
		(((1600 * 9.80665 * 0.012 + 0.6 * 0.75 * 29.0576 ** 2) * 29.0576) / 0.85 + 16000) / 0.38 / 42e6,
	],
	[
		'fuel.cruise_range',
		{ 'fuel.tank_size': 0.06, 'fuel.density': 750, 'fuel.cruise_flow': 0.0025 },
		((0.9 * 0.06 * 750) / 0.0025) * 29.0576,
	],
	['fuel.full_load_minutes', { 'fuel.tank_size': 0.06, 'fuel.density': 750, 'fuel.flow': 0.03 }, 22.5],
]);
