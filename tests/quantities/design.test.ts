import { describe, expect, test } from 'vitest';
import { unitOf } from '../../src/audit/quantity-values.ts';
import { quantities } from '../../src/quantities/all.ts';
import { rangeOf } from '../../src/quantities/range.ts';
import { textIn } from '../../src/sheet/text.ts';
import { testModel } from '../support/model.ts';

/** Every quantity that the design names: the unit it is reported in, its kind of number, and whether it is an estimate. */
const designed: readonly (readonly [id: string, unit: string | null, kind: string, nature: 'exact' | 'estimate'])[] = [
	['air.ambient_pressure', 'Pa', 'absolute-pressure', 'exact'],
	['air.ambient_density', 'kg/m3', 'density', 'exact'],
	['boost.manifold_pressure', 'Pa abs', 'absolute-pressure', 'exact'],
	['boost.pressure_ratio', '1', 'ratio', 'exact'],
	['boost.compressor_outlet_temp', 'K', 'temperature', 'exact'],
	['boost.charge_temp', 'K', 'temperature', 'exact'],
	['boost.density_ratio', '1', 'ratio', 'exact'],
	['engine.displacement', 'm3', 'volume', 'exact'],
	['engine.air_flow', 'kg/s', 'mass-flow', 'exact'],
	['engine.mean_piston_speed', 'm/s', 'velocity', 'exact'],
	['boost.compressor_flow_corrected', 'kg/s', 'mass-flow', 'exact'],
	['boost.pipe_velocity', 'm/s', 'velocity', 'exact'],
	['engine.air_efficiency', '1', 'ratio', 'estimate'],
	['engine.power', 'W', 'power', 'estimate'],
	['engine.torque', 'N m', 'torque', 'exact'],
	['engine.peak_torque', 'N m', 'torque', 'estimate'],
	['engine.bmep', 'Pa', 'pressure', 'exact'],
	['boost.for_power_goal', 'Pa', 'pressure', 'estimate'],
	['engine.idle_air_flow', 'kg/s', 'mass-flow', 'estimate'],
	['fuel.stoichiometric_ratio', '1', 'ratio', 'exact'],
	['fuel.density', 'kg/m3', 'density', 'exact'],
	['fuel.heating_value', 'J/kg', 'energy-per-mass', 'exact'],
	['fuel.octane_ron', '1', 'octane', 'estimate'],
	['fuel.flow', 'kg/s', 'mass-flow', 'exact'],
	['injectors.pressure_across', 'Pa', 'pressure', 'exact'],
	['injectors.flow', 'kg/s', 'mass-flow', 'exact'],
	['injectors.pulse_width', 's', 'time', 'exact'],
	['injectors.duty', '1', 'ratio', 'exact'],
	['injectors.flow_needed', 'kg/s', 'mass-flow', 'exact'],
	['injectors.boost_limit', 'Pa', 'pressure', 'estimate'],
	['injectors.fuel_error', '1', 'ratio', 'exact'],
	['injectors.idle_pulse_width', 's', 'time', 'estimate'],
	['fuel.line_flow', 'kg/s', 'mass-flow', 'exact'],
	['fuel.line_velocity', 'm/s', 'velocity', 'exact'],
	['fuel.line_reynolds', '1', 'ratio', 'exact'],
	['fuel.line_friction_factor', '1', 'ratio', 'exact'],
	['fuel.line_loss', 'Pa', 'pressure', 'exact'],
	['fuel.pump_pressure', 'Pa', 'pressure', 'exact'],
	['fuel.pump_available', 'kg/s', 'mass-flow', 'estimate'],
	['fuel.pump_margin', '1', 'ratio', 'exact'],
	['fuel.pump_boost_limit', 'Pa', 'pressure', 'estimate'],
	['fuel.rail_pressure_under_flow', 'Pa', 'pressure', 'estimate'],
	['sensors.meter_voltage_peak', 'V', 'voltage', 'exact'],
	['sensors.meter_flow_ceiling', 'kg/s', 'mass-flow', 'exact'],
	['sensors.meter_headroom', '1', 'ratio', 'exact'],
	['sensors.meter_boost_limit', 'Pa', 'pressure', 'estimate'],
	['sensors.scaler_needed', 'V', 'voltage', 'exact'],
	['sensors.meter_voltage_idle', 'V', 'voltage', 'estimate'],
	['sensors.load_seen', '1', 'ratio', 'exact'],
	['sensors.map_margin', '1', 'ratio', 'exact'],
	['sensors.speed_error', '1', 'ratio', 'exact'],
	['engine.ratio_from_volumes', '1', 'ratio', 'exact'],
	['engine.static_ratio', '1', 'ratio', 'exact'],
	['engine.effective_compression_ratio', '1', 'ratio', 'exact'],
	['engine.cranking_pressure_expected', 'Pa', 'pressure', 'estimate'],
	['engine.compression_spread', '1', 'ratio', 'exact'],
	['engine.compression_neighbours', null, 'list', 'exact'],
	['ignition.gas_density_at_spark', '1', 'ratio', 'exact'],
	['ignition.required_voltage', 'V', 'voltage', 'estimate'],
	['ignition.capacity', 'V', 'voltage', 'estimate'],
	['ignition.spark_margin', '1', 'ratio', 'exact'],
	['ignition.gap_limit', 'm', 'length', 'estimate'],
	['ignition.boost_limit', 'Pa', 'pressure', 'estimate'],
	['ignition.companions', null, 'list', 'exact'],
	['engine.peak_pressure', 'Pa', 'absolute-pressure', 'estimate'],
	['engine.peak_pressure_angle', 'deg', 'angle', 'estimate'],
	['engine.knock_integral', '1', 'ratio', 'estimate'],
	['engine.knock_limited_advance', 'deg', 'angle', 'estimate'],
	['engine.knock_boost_limit', 'Pa', 'pressure', 'estimate'],
	['engine.head_clamp_ratio', '1', 'ratio', 'estimate'],
	['engine.head_boost_limit', 'Pa', 'pressure', 'estimate'],
	['engine.ring_gap_needed', 'm', 'length', 'estimate'],
	['engine.oil_pressure_needed', 'Pa', 'pressure', 'estimate'],
	['fuel.pump_wire_drop', 'V', 'voltage', 'estimate'],
	['charging.cable_drop', 'V', 'voltage', 'estimate'],
	['fuel.pump_wire_ok', null, 'yes-no', 'estimate'],
	['charging.cable_ok', null, 'yes-no', 'estimate'],
	['cooling.fan_wire_ok', null, 'yes-no', 'estimate'],
	['charging.balance', 'A', 'current', 'estimate'],
	['charging.balance_idle', 'A', 'current', 'estimate'],
	['harness.days_to_flat', 'days', 'days', 'exact'],
	['charging.state_of_charge', '1', 'ratio', 'estimate'],
	['driveline.clutch_capacity', 'N m', 'torque', 'exact'],
	['driveline.clutch_margin', '1', 'ratio', 'exact'],
	['driveline.gearbox_margin', '1', 'ratio', 'exact'],
	['driveline.clutch_boost_limit', 'Pa', 'pressure', 'estimate'],
	['driveline.gearbox_boost_limit', 'Pa', 'pressure', 'estimate'],
	['driveline.shaft_critical_speed', 'rpm', 'rotation', 'exact'],
	['driveline.shaft_speed_at_redline', 'rpm', 'rotation', 'exact'],
	['driveline.cruise_speed', 'rpm', 'rotation', 'exact'],
	['driveline.joint_angle_difference', 'deg', 'angle', 'exact'],
	['cooling.heat_to_coolant', 'W', 'power', 'estimate'],
];

const byId = new Map(quantities.map(quantity => [quantity.id, quantity]));

describe('every quantity of the design is there, in its unit', () => {
	test.each(designed)('%s in %s', (id, unit, kind, nature) => {
		const quantity = byId.get(id);
		expect(quantity && { unit: unitOf(quantity), kind: quantity.kind, nature: quantity.nature }).toEqual({
			unit,
			kind,
			nature,
		});
	});

	test('and 92 they are', () => {
		expect(new Set(designed.map(([id]) => id)).size).toBe(designed.length);
		expect(designed).toHaveLength(92);
	});
});

describe('every quantity shows', () => {
	const { sources } = testModel().rulebook;

	test('its relation in words and where that is from, by a name in the list of sources', () => {
		for (const { id, formula, source } of quantities) {
			expect(textIn(formula, 'us').length, id).toBeGreaterThan(5);
			expect(source.length, id).toBeGreaterThan(0);
			for (const name of source) expect(sources[name], `${id}: ${name}`).toBeTypeOf('string');
		}
	});

	test('what it can come to, if it is a number', () => {
		for (const quantity of quantities) {
			const range = rangeOf(quantity);
			expect(range !== null, quantity.id).toBe(unitOf(quantity) !== null);
			if (range) expect(range[0] ?? -Infinity, quantity.id).toBeLessThan(range[1] ?? Infinity);
		}
	});

	test('a band about its own figure, and that it is an estimate, where it has a band', () => {
		const banded = quantities.filter(quantity => 'band' in quantity && quantity.band);
		expect(banded.filter(({ nature }) => nature !== 'estimate')).toEqual([]);
		for (const { band } of banded as readonly { band: readonly [number, number] }[]) {
			expect(band[0]).toBeLessThanOrEqual(1);
			expect(band[1]).toBeGreaterThanOrEqual(1);
		}
	});
});
