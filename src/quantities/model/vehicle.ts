import { discMass, heating, ironHeat, slaveTravel, speedSymbols, stopEnergy } from '../../physics/vehicle.ts';
import { standardGravity } from '../../units/defined.ts';
import { assumption, quantity } from '../quantity.ts';

export const frontShare = assumption({
	id: 'driveline.front_weight_share',
	label: 'share of weight on the front axle',
	kind: 'ratio',
	value: 0.55,
	spread: 0.04,
	formula: 'usual share of the weight on the front axle with a V8 in front',
	source: ['practice'],
	nature: 'estimate',
});

/** Share of the braking that both front brakes do. Limpert; common practice. */
const frontBrakeShare = 0.7;

export const discHeating = quantity({
	id: 'driveline.disc_heating',
	label: 'front disc heating in one stop',
	kind: 'temperature-difference',
	inputs: [
		'driveline.vehicle_mass',
		'driveline.highest_speed',
		'driveline.front_brakes',
		'driveline.front_disc_diameter',
		'driveline.front_disc_thickness',
	],
	formula:
		'70 % of mass x highest speed^2 / 2 into both front discs: ring from 0.6 of the diameter outward, 60 % iron if vented, 530 J/kgK',
	source: ['limpert'],
	nature: 'estimate',
	band: [0.8, 1.25],
	compute: q => {
		const kind = q.choice('driveline.front_brakes');
		if (kind === 'drums') return null;
		const energy = stopEnergy(q.number('driveline.vehicle_mass'), q.number('driveline.highest_speed'));
		const disc = discMass(
			q.number('driveline.front_disc_diameter'),
			q.number('driveline.front_disc_thickness'),
			kind === 'vented-discs',
		);
		return heating((frontBrakeShare * energy) / 2, disc, ironHeat);
	},
});

export const discTemperature = quantity({
	id: 'driveline.disc_temperature',
	label: 'front disc temperature after one stop',
	kind: 'temperature',
	inputs: ['build.hot_day', 'driveline.disc_heating'],
	formula: 'hottest day + heating, from cold discs',
	source: ['limpert'],
	nature: 'estimate',
	compute: q => q.number('build.hot_day') + q.number('driveline.disc_heating'),
});

export const tireSpeed = quantity({
	id: 'driveline.tire_speed_most',
	label: 'highest speed of the tires',
	kind: 'velocity',
	shown: { us: 'mph', metric: 'km/h' },
	inputs: ['driveline.tire_speed_symbol'],
	formula: 'speed symbol: Q 160, R 170, S 180, T 190, H 210, V 240, W 270, Y 300 km/h',
	source: ['un-r30'],
	nature: 'exact',
	compute: q => {
		const symbol = q.choice('driveline.tire_speed_symbol') as keyof typeof speedSymbols | undefined;
		return symbol && speedSymbols[symbol];
	},
});

export const tireLoad = quantity({
	id: 'driveline.tire_load',
	label: 'load on each front tire',
	kind: 'mass',
	inputs: ['driveline.vehicle_mass', 'driveline.front_weight_share'],
	formula: 'vehicle weight x front share / 2',
	source: ['definition'],
	nature: 'exact',
	compute: q => (q.number('driveline.vehicle_mass') * q.number('driveline.front_weight_share')) / 2,
});

export const axleTorque = quantity({
	id: 'driveline.axle_torque',
	label: 'axle torque in first gear',
	kind: 'torque',
	inputs: ['engine.peak_torque', 'driveline.first_gear', 'driveline.axle_ratio', 'driveline.tire_grip_torque'],
	formula: 'the lesser of peak torque x first gear x axle ratio and what the tires hold',
	source: ['definition', 'practice'],
	nature: 'estimate',
	compute: q =>
		Math.min(
			q.number('engine.peak_torque') * q.number('driveline.first_gear') * q.number('driveline.axle_ratio'),
			q.number('driveline.tire_grip_torque'),
		),
});

/** Friction of street tires on a dry road, 0.9 to 1.3; share of the weight on the rear axle in a hard start. Common practice. */
const [tireFriction, rearShare] = [1.1, 0.65];

export const gripTorque = quantity({
	id: 'driveline.tire_grip_torque',
	label: 'torque that the rear tires hold',
	kind: 'torque',
	inputs: ['driveline.vehicle_mass', 'driveline.tyre_diameter'],
	formula: 'grip 1.1 x 0.65 of the weight on the rear axle x tire radius',
	source: ['practice'],
	nature: 'estimate',
	band: [0.75, 1.25],
	compute: q =>
		(tireFriction *
			rearShare *
			q.number('driveline.vehicle_mass') *
			standardGravity *
			q.number('driveline.tyre_diameter')) /
		2,
});

export const slave = quantity({
	id: 'driveline.clutch_slave_travel',
	label: 'clutch slave cylinder travel',
	kind: 'length',
	inputs: ['driveline.clutch_master_travel', 'driveline.clutch_master_bore', 'driveline.clutch_slave_bore'],
	formula: 'master travel x (master bore / slave bore)^2',
	source: ['pascal'],
	nature: 'exact',
	compute: q =>
		slaveTravel(
			q.number('driveline.clutch_master_travel'),
			q.number('driveline.clutch_master_bore'),
			q.number('driveline.clutch_slave_bore'),
		),
});
