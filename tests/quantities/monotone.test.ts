import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate } from '../../src/graph/solve.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { testModel } from '../support/model.ts';
import { anySheet } from './any-sheet.ts';
import { stateOf } from './by-hand.ts';

const { questions } = testModel().rulebook;

/** What physics says of a quantity while one answer goes up and all others stand: never less, or never more. */
const pairs: readonly (readonly [answer: string, quantity: string, way: 'up' | 'down'])[] = [
	['boost.target', 'boost.charge_temp', 'up'],
	['boost.target', 'engine.air_flow', 'up'],
	['boost.target', 'engine.power', 'up'],
	['boost.target', 'injectors.duty', 'up'],
	['boost.target', 'injectors.flow_needed', 'up'],
	['boost.target', 'fuel.pump_margin', 'down'],
	['boost.target', 'sensors.meter_headroom', 'down'],
	['boost.target', 'sensors.map_margin', 'down'],
	['boost.target', 'ignition.spark_margin', 'down'],
	['boost.target', 'ignition.gap_limit', 'down'],
	['boost.target', 'engine.peak_pressure', 'up'],
	['boost.target', 'engine.knock_integral', 'up'],
	['boost.target', 'engine.head_clamp_ratio', 'down'],
	['boost.target', 'driveline.clutch_margin', 'down'],
	['boost.target', 'cooling.heat_to_coolant', 'up'],
	['build.altitude', 'air.ambient_density', 'down'],
	['build.altitude', 'engine.air_flow', 'down'],
	['build.altitude', 'engine.cranking_pressure_expected', 'down'],
	['build.humidity', 'air.ambient_density', 'down'],
	['build.hot_day', 'engine.air_flow', 'down'],
	['build.power_goal', 'boost.for_power_goal', 'up'],
	['boost.compressor_efficiency', 'boost.charge_temp', 'down'],
	['boost.intercooler_effectiveness', 'engine.air_flow', 'up'],
	['boost.pipe_bore', 'boost.pipe_velocity', 'down'],
	['engine.volumetric_efficiency', 'engine.peak_pressure', 'up'],
	['engine.compression_ratio', 'engine.cranking_pressure_expected', 'up'],
	['engine.compression_ratio', 'engine.peak_pressure', 'up'],
	['engine.intake_closes', 'engine.effective_compression_ratio', 'down'],
	['ignition.full_load_advance', 'engine.peak_pressure', 'up'],
	['ignition.gap', 'ignition.spark_margin', 'down'],
	['fuel.octane', 'engine.knock_integral', 'down'],
	['fuel.octane', 'engine.knock_boost_limit', 'up'],
	['fuel.pressure', 'injectors.flow', 'up'],
	['fuel.pump_voltage', 'fuel.pump_margin', 'up'],
	['fuel.line_length', 'fuel.line_loss', 'up'],
	['fuel.elbows', 'fuel.line_loss', 'up'],
	['injectors.rated_flow', 'injectors.duty', 'down'],
	['injectors.rated_flow', 'injectors.boost_limit', 'up'],
	['injectors.dead_time', 'injectors.duty', 'up'],
	['engine.stroke', 'engine.mean_piston_speed', 'up'],
	['engine.fastener_torque', 'engine.head_boost_limit', 'up'],
	['charging.cable_length', 'charging.cable_drop', 'up'],
	['charging.battery_rest', 'charging.state_of_charge', 'up'],
	['harness.key_off_draw', 'harness.days_to_flat', 'down'],
	['driveline.clutch_torque', 'driveline.clutch_boost_limit', 'up'],
	['driveline.shaft_length', 'driveline.shaft_critical_speed', 'down'],
	['driveline.tyre_diameter', 'driveline.cruise_speed', 'down'],
	['driveline.highest_speed', 'driveline.disc_temperature', 'up'],
	['driveline.front_disc_thickness', 'driveline.disc_temperature', 'down'],
	['boost.wastegate_bore', 'boost.wastegate_margin', 'up'],
	['boost.bypass_bore', 'boost.bypass_valve_margin', 'up'],
	['fuel.tank_size', 'fuel.cruise_range', 'up'],
	['fuel.pump_current', 'fuel.pump_wire_longest', 'down'],
];

/** Builds that fit together, more often boosted than not. */
const fitting: readonly (readonly [string, Answer])[] = [
	['engine.compression_ratio', { value: 9.5, unit: ':1' }],
	['boost.kind', { value: 'turbocharger' }],
	['boost.intercooler', { value: 'air-to-air' }],
	['engine.head_fasteners', { value: 'studs' }],
];
const sheets: fc.Arbitrary<Sheet> = fc
	.tuple(anySheet(questions, 'plausible', 0.9), fc.integer({ min: 0, max: 3 }))
	.map(([sheet, lot]) => (lot === 0 ? sheet : fitting.reduce((now, [id, is]) => withAnswer(now, id, is), sheet)));

/** Each solved once, for all pairs. */
const states = fc.sample(sheets, { seed, numRuns: 2 * counts.sheets }).map(stateOf);

test.each(pairs)('more %s, other answers as they are: %s never goes the other way than %s', (answer, quantity, way) => {
	const [low, high] = questions.find(({ id }) => id === answer)!.plausible!;
	// A boost limit is found to 1e-9 of 40 psi.
	const slack = /boost_limit|for_power_goal/.test(quantity) ? 6e-4 : 0;
	const random = chance(seed);
	let seen = 0;
	for (const [index, state] of states.entries()) {
		const at = (share: number) => {
			const [value] = evaluate(state, [quantity], { [answer]: low + (high - low) * share });
			return typeof value === 'number' ? value : undefined;
		};
		const [one, two] = [random(), random()];
		const [less, more] = [at(Math.min(one, two)), at(Math.max(one, two))];
		if (less === undefined || more === undefined) continue;
		if (less !== more) seen++;
		const gone = way === 'up' ? more - less : less - more;
		expect(gone, `sheet ${index}: ${less} to ${more}`).toBeGreaterThanOrEqual(-1e-9 * Math.abs(less) - slack);
	}
	expect(seen).toBeGreaterThan(0);
});
