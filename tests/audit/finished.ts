import type { Answer, Sheet } from '../../src/sheet/sheet.ts';
import { changed } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const without = (ids: readonly string[]): Record<string, Answer | undefined> =>
	Object.fromEntries(ids.map(id => [id, undefined]));

/** What only a car that has made boost, or run at full load, has shown. */
export const shownByDriving = [
	'boost.logged_peak',
	'boost.lambda_logged',
	'injectors.duty_logged',
	'ignition.knock_seen',
	'ignition.blown_gap',
	'ignition.blown_boost',
	'ignition.proven_gap',
	'ignition.proven_boost',
	'fuel.pressure_under_load',
	'sensors.meter_volts_full_load',
];

/** What is inside an engine that nobody has opened. */
const inside = [
	'engine.chamber_volume',
	'engine.piston_volume',
	'engine.gasket_thickness',
	'engine.gasket_bore',
	'engine.deck_clearance',
	'engine.pistons',
	'engine.ring_gap',
	'engine.head_fasteners',
	'engine.fastener_count',
	'engine.fastener_size',
	'engine.fastener_torque',
	'engine.head_gasket',
	'engine.bearings',
	'engine.rings',
	'engine.compression_wet',
	'engine.leakdown',
];

/** What is asked under boost alone. */
const boostedOnly = [
	'sensors.meter_curve',
	'sensors.meter_scaler',
	'sensors.meter_ceiling',
	'sensors.meter_curve_loaded',
];

/** Every number measured: who has finished a car has gone round it with rule, gauge and meter. */
function measured(sheet: Sheet): Sheet {
	const answers = Object.entries(sheet.answers).map(([section, inside]) => [
		section,
		Object.fromEntries(
			Object.entries(inside).map(([name, answer]) => [
				name,
				answer.unit !== undefined && answer.known === undefined ? { ...answer, known: 'measured' } : answer,
			]),
		),
	]);
	return { ...sheet, answers: Object.fromEntries(answers) };
}

const boosted = measured(buildSheet('boosted'));
const unboosted = measured(buildSheet('unboosted'));

/** Finished, sound cars, as good shops hand them over; invented. */
export const finished: readonly (readonly [string, Sheet])[] = [
	['boosted, logs clean', boosted],
	['boosted, never boosted yet', changed(boosted, without(shownByDriving))],
	['unboosted, driven', unboosted],
	['unboosted, never driven', changed(unboosted, without(shownByDriving))],
	['unboosted, engine never opened', changed(unboosted, without([...shownByDriving, ...inside, ...boostedOnly]))],
];

const is = (value: Answer['value']): Answer => ({ value });
const of = (value: number, unit: string): Answer => ({ value, unit, known: 'measured' });

const automatic: Readonly<Record<string, Answer>> = {
	'driveline.gearbox': is('automatic'),
	'driveline.start_inhibit': is('neutral-switch'),
	'driveline.converter_gap': of(0.12, 'in'),
	'driveline.fluid_cooler': is('both'),
	'driveline.fluid_lines': is('steel-or-rated'),
	'driveline.fluid_level': is('right'),
	'driveline.park_proved': is('proved'),
	'driveline.lockup': is('none'),
	'harness.calibrated_for': is('automatic'),
};

/** Sound cars of other kinds, invented: nothing about them may be called wrong. */
export const sound: readonly (readonly [string, Sheet])[] = [
	[
		'tows, electronic automatic',
		changed(unboosted, {
			...automatic,
			'driveline.shift_control': is('electronic'),
			'driveline.lockup': is('controller'),
			'driveline.converter_stall': of(1800, 'rpm'),
			'harness.gearbox_circuits': is([
				'front-oxygen',
				'rear-oxygen',
				'reverse-lamps',
				'speed-signal',
				'clutch-or-neutral-switch',
				'shift-solenoids',
			]),
			'build.use': is('tow'),
			'driveline.vehicle_mass': of(4800, 'lb'),
			'driveline.trailer_mass': of(5000, 'lb'),
			'cooling.vehicle_power': of(400, 'hp'),
			'fuel.tank_size': of(26, 'gal'),
		}),
	],
	[
		'camshaft of its own, pressure-cable automatic, driven for the first time',
		changed(unboosted, {
			...without(shownByDriving),
			...automatic,
			'build.stage': is('has-fired'),
			'driveline.shift_control': is('throttle-cable'),
			'driveline.pressure_cable': is('set'),
			'driveline.pressure_cable_radius': of(1.1, 'in'),
			'driveline.pressure_cable_travel': of(1.4, 'in'),
			'driveline.converter_stall': of(2400, 'rpm'),
			'engine.camshaft': is('other'),
			'engine.lifters': is('flat-own-lobe'),
			'engine.cam_gear': is('cast-iron'),
			'engine.drive_gear': is('iron'),
			'engine.cam_duration': of(284, 'deg'),
			'engine.valve_lift': of(0.47, 'in'),
			'engine.spring_height': of(1.75, 'in'),
			'engine.spring_solid_height': of(1.15, 'in'),
			'engine.spring_open_force': of(290, 'lbf'),
			'engine.intake_valve_clearance': of(0.14, 'in'),
			'engine.exhaust_valve_clearance': of(0.16, 'in'),
			'engine.idle_vacuum': of(15, 'inHg'),
		}),
	],
	[
		'circuit, motor throttle',
		changed(unboosted, {
			'build.use': is('circuit'),
			'sensors.throttle_kind': is('motor'),
			'sensors.throttle_match': is('one-vehicle'),
			'sensors.pedal_signals': is('agree'),
			'driveline.guards': is(['shaft-loop']),
			'cooling.vehicle_power': of(400, 'hp'),
			'fuel.tank_size': of(17, 'gal'),
		}),
	],
	[
		'turbocharged, vacuum-hose automatic, flash codes',
		changed(boosted, {
			...automatic,
			'driveline.shift_control': is('vacuum-hose'),
			'driveline.modulator': is(['hose-on-manifold', 'hose-dry', 'kickdown-joined']),
			'driveline.converter_stall': of(2300, 'rpm'),
			'harness.code_reading': is('flashes'),
			'harness.flash_codes': is('none'),
			'boost.bypass_bore': of(1.5, 'in'),
			'fuel.tank_size': of(12, 'gal'),
		}),
	],
];
