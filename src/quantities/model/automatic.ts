import { leverTravel, roadLoad, shaftPower } from '../../physics/vehicle.ts';
import { milePerHour } from '../../units/defined.ts';
import { quantity } from '../quantity.ts';

/** deg that a throttle lever turns from closed to wide open. Common practice. */
const throttleSweep = 80;

export const pressureCable = quantity({
	id: 'driveline.pressure_cable_pull',
	label: 'pull of the throttle on the pressure cable',
	kind: 'length',
	inputs: ['driveline.pressure_cable_radius'],
	formula: 'chord of the lever: 2 radius sin 40 deg, the throttle turning 80 deg',
	source: ['geometry'],
	nature: 'estimate',
	band: [0.95, 1.05],
	compute: q => leverTravel(q.number('driveline.pressure_cable_radius'), throttleSweep),
});

export const stallHeat = quantity({
	id: 'driveline.stall_heat',
	label: 'heat in the converter at stall',
	kind: 'power',
	inputs: ['engine.peak_torque', 'driveline.converter_stall'],
	formula: 'peak torque x stall speed: with the wheels held all of it becomes heat',
	source: ['definition'],
	nature: 'estimate',
	compute: q => shaftPower(q.number('engine.peak_torque'), q.number('driveline.converter_stall')),
});

/** J/K of the fluid that a stalled converter heats, 8 kg of 2100 J/kgK, and K that it may get warmer. Common practice. */
const [fluidHeatCapacity, allowedRise] = [8 * 2100, 50];

export const stallTime = quantity({
	id: 'driveline.stall_time',
	label: 'longest time at stall',
	kind: 'time',
	shown: { us: 's', metric: 's' },
	inputs: ['driveline.stall_heat'],
	formula: 'time in which stall heats 8 kg of fluid (2100 J/kgK) by 50 K',
	source: ['practice'],
	nature: 'estimate',
	band: [0.6, 1.5],
	compute: q => (fluidHeatCapacity * allowedRise) / q.number('driveline.stall_heat'),
});

/**
 * A 4 % grade at 55 mph (m/s) with the lock-up open. A converter then loses 10 % of the power (6 to 15), and car and trailer
 * have a drag area of 2.5 m2 (1.5 to 3.5). Common practice.
 */
const [grade, roadSpeed, converterLoss, dragArea] = [0.04, 55 * milePerHour, 0.1, 2.5];

export const towingHeat = quantity({
	id: 'driveline.towing_heat',
	label: 'heat in the transmission while towing',
	kind: 'power',
	inputs: ['driveline.vehicle_mass', 'driveline.trailer_mass'],
	formula: {
		us: '10 % of the power that holds car and trailer at 55 mph up a 4 % grade, lock-up open, drag area 2.5 m2',
		metric: '10 % of the power that holds car and trailer at 89 km/h up a 4 % grade, lock-up open, drag area 2.5 m2',
	},
	source: ['gillespie', 'practice'],
	nature: 'estimate',
	band: [0.6, 1.5],
	compute: q =>
		converterLoss *
		roadLoad(q.number('driveline.vehicle_mass') + q.number('driveline.trailer_mass'), roadSpeed, grade, dragArea),
});
