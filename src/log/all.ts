import * as air from './pull/air.ts';
import * as boost from './pull/boost.ts';
import * as driveline from './pull/driveline.ts';
import * as fuel from './pull/fuel.ts';
import * as mixture from './pull/mixture.ts';
import * as oil from './pull/oil.ts';
import * as rates from './pull/rates.ts';
import * as spark from './pull/spark.ts';
import * as throttle from './pull/throttle.ts';
import type { LogQuantity } from './quantity.ts';
import * as closure from './run/closure.ts';
import * as coolant from './run/coolant.ts';
import * as gearing from './run/gearing.ts';
import * as idle from './run/idle.ts';
import * as outside from './run/outside.ts';
import * as running from './run/running.ts';
import * as seen from './run/seen.ts';
import * as start from './run/start.ts';
import * as table from './run/table.ts';
import * as trims from './run/trims.ts';

const subjects = [
	table,
	start,
	outside,
	idle,
	trims,
	running,
	coolant,
	gearing,
	closure,
	seen,
	boost,
	mixture,
	fuel,
	air,
	spark,
	throttle,
	driveline,
	oil,
	rates,
];

/** Every quantity that a log tells: what a subject file exports. */
export const logQuantities: readonly LogQuantity[] = subjects.flatMap(subject =>
	Object.values(subject).filter(
		(made): made is LogQuantity & typeof made => typeof made === 'object' && 'logged' in made,
	),
);
