import { describe, expect, test } from 'vitest';
import { unitOf } from '../../../src/audit/quantity-values.ts';
import { quantities } from '../../../src/quantities/model/all.ts';
import { emptySheet } from '../../../src/sheet/sheet.ts';
import { testModel } from '../../support/model.ts';
import { stateOf } from '../by-hand.ts';

/** Every quantity that the contract names, by the unit it is told in; null for lists and yes or no. */
const promised: Readonly<Record<string, readonly string[]>> = {
	Pa: [
		'air.ambient_pressure',
		'engine.bmep',
		'boost.for_power_goal',
		'injectors.pressure_across',
		'injectors.boost_limit',
		'fuel.line_loss',
		'fuel.pump_pressure',
		'fuel.pump_boost_limit',
		'fuel.rail_pressure_under_flow',
		'sensors.meter_boost_limit',
		'engine.cranking_pressure_expected',
		'ignition.boost_limit',
		'engine.peak_pressure',
		'engine.knock_boost_limit',
		'engine.head_boost_limit',
		'engine.oil_pressure_needed',
		'driveline.clutch_boost_limit',
		'driveline.gearbox_boost_limit',
	],
	'Pa abs': ['boost.manifold_pressure'],
	K: ['boost.compressor_outlet_temp', 'boost.charge_temp'],
	'kg/m3': ['air.ambient_density', 'fuel.density'],
	'J/kg': ['fuel.heating_value'],
	'1': [
		'boost.pressure_ratio',
		'boost.density_ratio',
		'engine.air_efficiency',
		'fuel.stoichiometric_ratio',
		'fuel.octane_ron',
		'injectors.duty',
		'injectors.fuel_error',
		'fuel.line_reynolds',
		'fuel.line_friction_factor',
		'fuel.pump_margin',
		'sensors.meter_headroom',
		'sensors.load_seen',
		'sensors.map_margin',
		'sensors.speed_error',
		'engine.ratio_from_volumes',
		'engine.static_ratio',
		'engine.effective_compression_ratio',
		'engine.compression_spread',
		'ignition.gas_density_at_spark',
		'ignition.spark_margin',
		'engine.knock_integral',
		'engine.head_clamp_ratio',
		'charging.state_of_charge',
		'driveline.clutch_margin',
		'driveline.gearbox_margin',
	],
	m3: ['engine.displacement'],
	m: ['ignition.gap_limit', 'engine.ring_gap_needed'],
	'kg/s': [
		'engine.air_flow',
		'boost.compressor_flow_corrected',
		'engine.idle_air_flow',
		'fuel.flow',
		'injectors.flow',
		'injectors.flow_needed',
		'fuel.line_flow',
		'fuel.pump_available',
		'sensors.meter_flow_ceiling',
	],
	'm/s': ['engine.mean_piston_speed', 'boost.pipe_velocity', 'fuel.line_velocity'],
	W: ['engine.power', 'cooling.heat_to_coolant'],
	'N m': ['engine.torque', 'driveline.clutch_capacity'],
	s: ['injectors.pulse_width', 'injectors.idle_pulse_width'],
	V: [
		'sensors.meter_voltage_peak',
		'sensors.scaler_needed',
		'sensors.meter_voltage_idle',
		'ignition.required_voltage',
		'ignition.capacity',
		'fuel.pump_wire_drop',
		'charging.cable_drop',
	],
	A: ['charging.balance', 'charging.balance_idle'],
	deg: ['engine.peak_pressure_angle', 'engine.knock_limited_advance', 'driveline.joint_angle_difference'],
	rpm: ['driveline.shaft_critical_speed', 'driveline.shaft_speed_at_redline', 'driveline.cruise_speed'],
	days: ['harness.days_to_flat'],
	null: [
		'engine.compression_neighbours',
		'ignition.companions',
		'fuel.pump_wire_ok',
		'charging.cable_ok',
		'cooling.fan_wire_ok',
	],
};

const byId = new Map(quantities.map(quantity => [quantity.id, quantity]));

describe('every quantity of the contract is there, in its unit', () => {
	test.each(Object.entries(promised).flatMap(([unit, ids]) => ids.map(id => [id, unit] as const)))(
		'%s in %s',
		(id, unit) => {
			const quantity = byId.get(id);
			expect(quantity, id).toBeDefined();
			expect(String(unitOf(quantity!))).toBe(unit);
		},
	);

	test('and 91 they are', () => {
		expect(new Set(Object.values(promised).flat()).size).toBe(Object.values(promised).flat().length);
		expect(Object.values(promised).flat()).toHaveLength(91);
	});
});

describe('the list of quantities', () => {
	test('names each once, and none that is a question', () => {
		expect(byId.size).toBe(quantities.length);
		const asked = new Set(testModel().rulebook.questions.map(({ id }) => id));
		expect(quantities.filter(({ id }) => asked.has(id))).toEqual([]);
	});

	test('tells each in words: a formula, a source', () => {
		for (const { id, formula, source } of quantities) {
			expect(formula.length, id).toBeGreaterThan(5);
			expect(source.length, id).toBeGreaterThan(0);
		}
	});

	test('calls an estimate whatever has a band or rests on common practice alone', () => {
		const estimate = quantities.filter(quantity => 'band' in quantity && quantity.band);
		expect(estimate.filter(({ nature }) => nature !== 'estimate')).toEqual([]);
		for (const { band } of estimate as readonly { band: readonly [number, number] }[]) {
			expect(band[0]).toBeLessThanOrEqual(1);
			expect(band[1]).toBeGreaterThanOrEqual(1);
		}
	});
});

test('of an empty sheet nothing is known but the air, the idle and what is usual; the rest says what it lacks', () => {
	const { graph, values, missing, broken } = stateOf(emptySheet('empty'));
	expect(broken.size).toBe(0);
	for (const { id, slot, quantity } of graph.nodes) {
		if (!quantity || values[slot] !== undefined) continue;
		expect(missing[slot], id).not.toEqual([]);
	}
	const known = (id: string) => values[graph.slotOf.get(id)!];
	expect(known('air.ambient_pressure')).toBeTypeOf('number');
	expect(known('engine.oil_pressure_needed')).toBeTypeOf('number');
	expect(known('engine.power')).toBeUndefined();
});
