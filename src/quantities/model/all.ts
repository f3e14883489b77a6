import type { AnyQuantity } from '../quantity.ts';
import * as afterMiles from './after-miles.ts';
import * as air from './air.ts';
import * as automatic from './automatic.ts';
import * as boost from './boost.ts';
import * as boostLimits from './boost-limits.ts';
import * as bottomEnd from './bottom-end.ts';
import * as combustion from './combustion.ts';
import * as compression from './compression.ts';
import * as cylinder from './cylinder.ts';
import * as driveline from './driveline.ts';
import * as electrics from './electrics.ts';
import * as engine from './engine.ts';
import * as fuel from './fuel.ts';
import * as fuelDelivery from './fuel-delivery.ts';
import * as fuelLine from './fuel-line.ts';
import * as harness from './harness.ts';
import * as head from './head.ts';
import * as ignition from './ignition.ts';
import * as injectors from './injectors.ts';
import * as knock from './knock.ts';
import * as pump from './pump.ts';
import * as sensors from './sensors.ts';
import * as speedLimits from './speed-limits.ts';
import * as stance from './stance.ts';
import * as towersAndPlugs from './towers-and-plugs.ts';
import * as turbocharger from './turbocharger.ts';
import * as valvetrain from './valvetrain.ts';
import * as vehicle from './vehicle.ts';

const subjects = [
	air,
	boost,
	boostLimits,
	engine,
	cylinder,
	compression,
	bottomEnd,
	combustion,
	knock,
	head,
	fuel,
	pump,
	fuelLine,
	fuelDelivery,
	injectors,
	sensors,
	speedLimits,
	ignition,
	towersAndPlugs,
	electrics,
	harness,
	driveline,
	vehicle,
	automatic,
	turbocharger,
	valvetrain,
	stance,
	afterMiles,
];

/** Every quantity that a subject file exports, in the order of the subjects. */
export const quantities: readonly AnyQuantity[] = subjects.flatMap(subject =>
	Object.values(subject).filter(
		(made): made is AnyQuantity & typeof made => typeof made === 'object' && 'formula' in made,
	),
);
