import { Bounded } from '../../graph/bounded.ts';
import { coolantShare, heatToCoolant } from '../../physics/cooling.ts';
import {
	clutchTorque,
	engineSpeedAt,
	jointAngleDifference,
	shaftCriticalSpeed,
	shaftTurns,
} from '../../physics/driveline.ts';
import { milePerHour } from '../../units/defined.ts';
import { limit, percent, quantity } from '../quantity.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

export const clutch = quantity({
	id: 'driveline.clutch_capacity',
	label: 'clutch capacity',
	kind: 'torque',
	inputs: [
		'driveline.clutch_torque',
		'driveline.clutch_clamp_force',
		'driveline.clutch_friction',
		'driveline.clutch_outer_radius',
		'driveline.clutch_inner_radius',
		'driveline.clutch_faces',
	],
	formula: 'its rating; else faces x friction x clamp force x (outer + inner radius) / 2, uniform wear',
	source: ['shigley'],
	nature: 'exact',
	compute: q => {
		// With an automatic none of these is in effect, and so there is no capacity.
		if (q.has('driveline.clutch_torque')) return q.number('driveline.clutch_torque');
		const parts = ['clamp_force', 'friction', 'outer_radius', 'inner_radius', 'faces'] as const;
		if (!parts.some(part => q.has(`driveline.clutch_${part}`))) return q.number('driveline.clutch_torque');
		return clutchTorque({
			clampForce: q.number('driveline.clutch_clamp_force'),
			friction: q.number('driveline.clutch_friction'),
			outerRadius: q.number('driveline.clutch_outer_radius'),
			innerRadius: q.number('driveline.clutch_inner_radius'),
			faces: q.number('driveline.clutch_faces'),
		});
	},
});

export const clutchMargin = quantity({
	id: 'driveline.clutch_margin',
	label: 'clutch margin',
	shown: percent,
	kind: 'ratio',
	inputs: ['driveline.clutch_capacity', 'engine.peak_torque'],
	range: [-1, null],
	formula: 'clutch capacity / peak torque - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('driveline.clutch_capacity') / q.number('engine.peak_torque') - 1,
});

export const gearboxMargin = quantity({
	id: 'driveline.gearbox_margin',
	label: 'transmission margin',
	shown: percent,
	kind: 'ratio',
	inputs: ['driveline.gearbox_torque', 'engine.peak_torque'],
	range: [-1, null],
	formula: 'transmission rating / peak torque - 1',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('driveline.gearbox_torque') / q.number('engine.peak_torque') - 1,
});

export const clutchLimit = limit({
	...boostLimitBase,
	id: 'driveline.clutch_boost_limit',
	label: 'clutch boost limit',
	formula: 'the boost at which the clutch margin reaches 0',
	limit: { ...varyingBoost, until: 'driveline.clutch_margin', reaches: 0, rising: false },
});

export const gearboxLimit = limit({
	...boostLimitBase,
	id: 'driveline.gearbox_boost_limit',
	label: 'transmission boost limit',
	formula: 'the boost at which the transmission margin reaches 0',
	limit: { ...varyingBoost, until: 'driveline.gearbox_margin', reaches: 0, rising: false },
});

export const critical = quantity({
	id: 'driveline.shaft_critical_speed',
	label: 'driveshaft critical speed',
	kind: 'rotation',
	inputs: ['driveline.shaft_length', 'driveline.shaft_diameter', 'driveline.shaft_wall'],
	formula:
		'first bending mode of a pinned steel tube, exact I and area, 205 GPa, 7850 kg/m3; under 5 diameters long: more than at 5',
	source: ['thomson'],
	nature: 'exact',
	compute: q => {
		const [length, diameter] = [q.number('driveline.shaft_length'), q.number('driveline.shaft_diameter')];
		const wall = q.number('driveline.shaft_wall');
		// A shorter shaft is no slender beam, for which the formula holds, but it whips later still.
		const shortest = 5 * diameter;
		if (length < shortest) return new Bounded(shaftCriticalSpeed(shortest, diameter, wall), 'above');
		return shaftCriticalSpeed(length, diameter, wall);
	},
});

export const shaftSpeed = quantity({
	id: 'driveline.shaft_speed_at_redline',
	label: 'driveshaft speed at the rev limit',
	kind: 'rotation',
	inputs: ['engine.redline', 'driveline.top_gear'],
	formula: 'redline / top gear',
	source: ['definition'],
	nature: 'exact',
	compute: q => q.number('engine.redline') / q.number('driveline.top_gear'),
});

/** What turns of the driveshaft for each m of road follow from. */
const finalDrive = ['driveline.axle_ratio', 'driveline.tyre_diameter'] as const;

export const shaftSpeedReached = quantity({
	id: 'driveline.shaft_speed_at_highest',
	label: 'driveshaft speed at top road speed',
	kind: 'rotation',
	inputs: ['driveline.highest_speed', ...finalDrive],
	formula: 'highest road speed x axle ratio / tire circumference',
	source: ['geometry'],
	nature: 'exact',
	compute: q =>
		engineSpeedAt(
			q.number('driveline.highest_speed'),
			1,
			shaftTurns(q.number('driveline.axle_ratio'), q.number('driveline.tyre_diameter')),
		),
});

/** A shaft is kept under three quarters of its whip speed, as share of it. Common practice. */
export const usableShaftSpeed = 0.75;

export const shaftLimitSpeed = quantity({
	id: 'driveline.shaft_limit_speed',
	label: 'driveshaft road speed limit',
	kind: 'velocity',
	shown: { us: 'mph', metric: 'km/h' },
	inputs: ['driveline.shaft_critical_speed', ...finalDrive],
	formula: 'road speed at 0.75 of the critical speed: its turns / turns a m of road',
	source: ['geometry', 'practice'],
	nature: 'exact',
	compute: q =>
		(usableShaftSpeed * q.number('driveline.shaft_critical_speed')) /
		engineSpeedAt(1, 1, shaftTurns(q.number('driveline.axle_ratio'), q.number('driveline.tyre_diameter'))),
});

/** m/s: the road speed of `driveline.cruise_speed`, 65 mph. */
export const cruiseRoadSpeed = 65 * milePerHour;

export const cruise = quantity({
	id: 'driveline.cruise_speed',
	label: 'cruise rpm',
	kind: 'rotation',
	inputs: ['driveline.axle_ratio', 'driveline.tyre_diameter', 'driveline.top_gear'],
	formula: { us: 'engine speed at 65 mph in top', metric: 'engine speed at 105 km/h in top' },
	source: ['geometry'],
	nature: 'exact',
	compute: q => {
		const gear = q.number('driveline.top_gear');
		return engineSpeedAt(
			cruiseRoadSpeed,
			gear,
			shaftTurns(q.number('driveline.axle_ratio'), q.number('driveline.tyre_diameter')),
		);
	},
});

export const joints = quantity({
	id: 'driveline.joint_angle_difference',
	label: 'joint angle difference',
	kind: 'angle',
	inputs: ['driveline.joint_angle_front', 'driveline.joint_angle_rear'],
	range: [0, 45],
	formula: "difference of the sizes of the two joints' angles",
	source: ['definition'],
	nature: 'exact',
	compute: q => jointAngleDifference(q.number('driveline.joint_angle_front'), q.number('driveline.joint_angle_rear')),
});

export const heat = quantity({
	id: 'cooling.heat_to_coolant',
	label: 'heat to the coolant',
	kind: 'power',
	inputs: ['fuel.flow', 'fuel.heating_value'],
	formula: "usual share (0.25, 0.17 to 0.30) of the fuel's energy at full load",
	source: ['heywood'],
	nature: 'estimate',
	band: [coolantShare.low / coolantShare.usual, coolantShare.high / coolantShare.usual],
	assumes: true,
	compute: q => heatToCoolant(q.number('fuel.flow'), q.number('fuel.heating_value')),
});
