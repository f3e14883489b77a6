import { roadLoad } from '../../physics/vehicle.ts';
import { fuelPower } from '../../physics/willans.ts';
import { quantity } from '../quantity.ts';
import { cruiseRoadSpeed } from './driveline.ts';

/** Drag area of a car, m2 (0.55 to 1.3); share of the flywheel's power that gets to the wheels. Common practice. */
export const [dragArea, drivelineEfficiency] = [0.75, 0.85];
/** Share of the tank's fuel that can be used: the pickup runs dry before the tank does. Common practice. */
const usableShare = 0.9;

export const cruiseFlow = quantity({
	id: 'fuel.cruise_flow',
	label: 'fuel flow at a cruise',
	kind: 'mass-flow',
	inputs: ['driveline.vehicle_mass', 'driveline.cruise_speed', 'engine.displacement', 'fuel.heating_value'],
	formula: {
		us: '(rolling 0.012 + drag of 0.75 m2 at 65 mph) / 0.85 through the driveline + 1.6 bar that the engine takes itself, over 0.38 of the heating value; level road, no wind; true value x 0.8 to x 1.35, mostly by the drag',
		metric:
			'(rolling 0.012 + drag of 0.75 m2 at 105 km/h) / 0.85 through the driveline + 1.6 bar that the engine takes itself, over 0.38 of the heating value; level road, no wind; true value x 0.8 to x 1.35, mostly by the drag',
	},
	source: ['gillespie', 'guzzella', 'practice'],
	nature: 'estimate',
	band: [0.8, 1.35],
	compute: q => {
		const wheels = roadLoad(q.number('driveline.vehicle_mass'), cruiseRoadSpeed, 0, dragArea);
		const fuel = fuelPower(
			wheels / drivelineEfficiency,
			q.number('driveline.cruise_speed'),
			q.number('engine.displacement'),
		);
		return fuel / q.number('fuel.heating_value');
	},
});

const fromTank = { inputs: ['fuel.tank_size', 'fuel.density'], source: ['practice'], nature: 'estimate' } as const;

export const cruiseRange = quantity({
	...fromTank,
	id: 'fuel.cruise_range',
	label: 'range at a cruise',
	kind: 'distance',
	inputs: [...fromTank.inputs, 'fuel.cruise_flow'],
	formula: {
		us: '0.9 of the tank / fuel flow at a cruise x 65 mph',
		metric: '0.9 of the tank / fuel flow at a cruise x 105 km/h',
	},
	compute: q =>
		((usableShare * q.number('fuel.tank_size') * q.number('fuel.density')) / q.number('fuel.cruise_flow')) *
		cruiseRoadSpeed,
});

export const fullLoadMinutes = quantity({
	...fromTank,
	id: 'fuel.full_load_minutes',
	label: 'minutes of full load in the tank',
	kind: 'count',
	inputs: [...fromTank.inputs, 'fuel.flow'],
	formula: '0.9 of the tank / fuel flow at best power',
	compute: q => (usableShare * q.number('fuel.tank_size') * q.number('fuel.density')) / q.number('fuel.flow') / 60,
});
