import { airGasConstant } from './constants.ts';
import { type CycleTrace, closedCycle } from './cycle.ts';
import { petrolGamma } from './gas.ts';
import { positive, within } from './range.ts';
import { type Cylinder, cylinderVolume, sweptVolume } from './slider-crank.ts';
import { burntAt } from './wiebe.ts';

/** One cylinder at full load, in the terms that a person or a gauge gives. */
export interface FullLoad {
	readonly cylinder: Cylinder;
	/** rpm. */
	readonly speed: number;
	/** deg after bottom dead centre. */
	readonly intakeCloses: number;
	/** Pa absolute and K, in the manifold. */
	readonly manifoldPressure: number;
	readonly chargeTemperature: number;
	/** Air drawn in over the swept volume at manifold density. */
	readonly volumetricEfficiency: number;
	readonly lambda: number;
	readonly fuel: { readonly stoichiometricRatio: number; readonly heatingValue: number };
	/** Spark, deg before top dead centre. */
	readonly advance: number;
	/** deg of crank from 10 to 90 % burnt. */
	readonly burnAngle?: number;
}

/** Burnt gas left in the charge, share of it. Common practice at full load. */
const residual = 0.06;
/** What walls and burnt gas warm the charge by on its way in, K. Common practice. */
const warming = 25;
/** Share of the burnable heat that is let go. Heywood, Internal Combustion Engine Fundamentals, section 3.5.4. */
const burntWell = 0.97;
/** Walls in the mean, K. Common practice. */
const wallTemperature = 450;
/** Crank angle from 10 to 90 % burnt, deg, of a two-valve chamber at full load. Common practice. */
const usualBurnAngle = 27;
/** The exhaust valve opens, deg after top dead centre: 60 before bottom, usual for a street cam. */
const exhaustOpens = 120;

/**
 * The cycle of one cylinder at full load, an estimate: air by volumetric efficiency, heat by the air or the fuel, whichever
 * is less, Wiebe's burn from the spark, Woschni's loss.
 *
 * Refuses figures not above 0, an intake that closes outside 0 to 120 deg after bottom, a spark before that, lambda
 * outside 0.5 to 2. The gas constant is dry air's from start to end.
 */
export function fullLoadCycle(engine: FullLoad): CycleTrace {
	const { cylinder, fuel, lambda } = engine;
	positive('manifold pressure', engine.manifoldPressure);
	positive('charge temperature', engine.chargeTemperature);
	positive('volumetric efficiency', engine.volumetricEfficiency);
	positive('stoichiometric ratio', fuel.stoichiometricRatio);
	positive('heating value', fuel.heatingValue);
	within('lambda', lambda, 0.5, 2);
	within('intake closing', engine.intakeCloses, 0, 120);
	const density = engine.manifoldPressure / (airGasConstant * engine.chargeTemperature);
	const air = engine.volumetricEfficiency * density * sweptVolume(cylinder.bore, cylinder.stroke);
	const mass = (air * (1 + 1 / (lambda * fuel.stoichiometricRatio))) / (1 - residual);
	const temperature = engine.chargeTemperature + warming;
	const shut = engine.intakeCloses - 180;
	return closedCycle({
		cylinder,
		speed: engine.speed,
		shut,
		opens: exhaustOpens,
		pressure: (mass * airGasConstant * temperature) / cylinderVolume(cylinder, shut),
		temperature,
		gamma: petrolGamma,
		burn: {
			start: -engine.advance,
			duration: (engine.burnAngle ?? usualBurnAngle) / (burntAt(0.9) - burntAt(0.1)),
			heat: (air / fuel.stoichiometricRatio) * fuel.heatingValue * Math.min(1, 1 / lambda) * burntWell,
		},
		walls: { temperature: wallTemperature, film: 'woschni' },
	});
}
