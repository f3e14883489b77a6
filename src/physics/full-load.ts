import { burnOverSpeed } from './burn-over-speed.ts';
import { type Charge, chargeOf } from './charge.ts';
import { airGasConstant } from './constants.ts';
import { type CycleTrace, closedCycle } from './cycle.ts';
import { flameAngle } from './flame.ts';
import { type FullLoad, keyOf } from './full-load-engine.ts';
import { gammaAt } from './gas.ts';
import { positive, within } from './range.ts';
import { keepingRecent } from './recent.ts';
import { cylinderVolume, sweptVolume } from './slider-crank.ts';
import { burntAt, usualPower } from './wiebe.ts';

/** Cycles kept at most: about 3 kB each, and an audit runs a few hundred. */
const capacity = 500;

/** Burnt gas left in the charge, share of it. Common practice at full load. */
export const residual = 0.06;
/** What walls and burnt gas warm the charge by on its way in, K. Common practice. */
const warming = 25;
/** Share of what the air can burn that does burn. Heywood, Internal Combustion Engine Fundamentals, section 3.5.4. */
const burntWell = 0.97;
/** Walls in the mean, K. Common practice. */
const wallTemperature = 450;
/** The exhaust valve opens, deg after top dead center: 60 before bottom, usual for a street cam. */
const exhaustOpens = 120;

/**
 * A two-valve chamber at 5000 rpm, 9:1, unboosted, full load, spark at 28 deg: deg from spark to 10 % burnt, and from there to
 * 90 %, by Wiebe's usual power. Common practice, which puts the best torque of such an engine at 28 to 32 deg.
 *
 * Half is burnt at the best indicated work 4 deg after top at 5000 rpm, 5 at 3500 and 7 at 2000, whatever the flame's length:
 * what sets it is heat lost to the walls, and that weighs more the slower it turns. The published 8 to 12 deg are of brake
 * torque, mostly at 1500 to 2500 rpm. Friction that rises with peak pressure moves it 1 deg later there; what is left is
 * what this model leaves out: dissociation and charge in crevices, both worst for an early burn. Torque is flat about it.
 *
 * Over speed the burn follows `burnOverSpeed`: best brake torque at 23 deg at 2000 rpm, 29 at 3500 and 31 at 5000, where practice
 * has 22 to 27, 28 to 30, 28 to 32. Others were tried, with 5000 rpm as it is: the third root of Hires et al. gives 16, 25, 31;
 * Bayraktar & Durgun's duration (2004, from memory) 12, 22, 31; residual by Fox, Cheng & Heywood (SAE 931025, from memory)
 * with the third root 20, 31, 41. Nothing was set to the sparks of practice.
 */
export const usualFlame = { development: 22, burn: 27 } as const;
const usualSpeed = burnOverSpeed(5000);
/** What `flameAngle` gives at the spark and at top dead center of that engine. */
const there = { spark: 0.006378, top: 0.004961 } as const;

/** Deg from spark to the start of Wiebe's curve, its whole duration in deg, its power. */
export interface Burn {
	readonly delay: number;
	readonly duration: number;
	readonly power: number;
}

/**
 * The burn in an engine: 10 % by the unburnt gas at the spark, the rest by that at top dead center, both motored, as at 5000 rpm;
 * from there by speed. A spark after top dead center counts as one there.
 */
export function burnOf(engine: FullLoad, start: Start): Burn {
	const { cylinder, lambda } = engine;
	const gamma = gammaAt(start.charge.unburnt, 500);
	const height = cylinder.stroke / (cylinder.ratio - 1);
	const angleAt = (crank: number) => {
		const squeeze = start.volume / cylinderVolume(cylinder, crank);
		const flame = {
			pressure: start.pressure * squeeze ** gamma,
			temperature: start.temperature * squeeze ** (gamma - 1),
			lambda,
			residual,
			ethanol: engine.fuel.ethanol,
		};
		return flameAngle(flame, cylinder.stroke, height);
	};
	const slower = engine.burn ?? 1;
	const development = (slower * usualFlame.development * angleAt(Math.min(0, -engine.advance))) / there.spark;
	const duration = (slower * usualFlame.burn * angleAt(0)) / there.top / (burntAt(0.9) - burntAt(0.1));
	const speed = burnOverSpeed(engine.speed);
	return {
		delay: (Math.max(0, development - burntAt(0.1) * duration) * speed.delay) / usualSpeed.delay,
		duration: (duration * speed.duration) / usualSpeed.duration,
		power: 1 + ((usualPower - 1) * speed.exponent) / usualSpeed.exponent,
	};
}

/** The charge where the intake closes: m3, Pa absolute, K, J to burn. */
export interface Start {
	readonly charge: Charge;
	readonly volume: number;
	readonly pressure: number;
	readonly temperature: number;
	readonly heat: number;
}

/** What changes from cycle to cycle is seldom the mixture. */
const chargeWith = keepingRecent(
	({ lambda, fuel }: FullLoad) => chargeOf(lambda, fuel.ethanol, residual),
	({ lambda, fuel }) => `${lambda} ${fuel.ethanol}`,
	20,
);

/** What the cylinder has caught: air by volumetric efficiency, its fuel, the residual. Errors as `fullLoadCycle`. */
export function trapped(engine: FullLoad): Start {
	const { cylinder, fuel, lambda } = engine;
	positive('manifold pressure', engine.manifoldPressure);
	positive('charge temperature', engine.chargeTemperature);
	positive('volumetric efficiency', engine.volumetricEfficiency);
	positive('stoichiometric ratio', fuel.stoichiometricRatio);
	positive('heating value', fuel.heatingValue);
	within('intake closing', engine.intakeCloses, 0, 120);
	const charge = chargeWith(engine);
	const density = engine.manifoldPressure / (airGasConstant * engine.chargeTemperature);
	const air = engine.volumetricEfficiency * density * sweptVolume(cylinder.bore, cylinder.stroke);
	const fuelMass = air / (lambda * fuel.stoichiometricRatio);
	const mass = (air + fuelMass) / (1 - residual);
	const temperature = engine.chargeTemperature + warming;
	const volume = cylinderVolume(cylinder, engine.intakeCloses - 180);
	return {
		charge,
		volume,
		pressure: (mass * charge.unburnt.constant * temperature) / volume,
		temperature,
		heat: burntWell * fuelMass * Math.max(0, fuel.heatingValue - charge.kept),
	};
}

/**
 * The cycle of one cylinder at full load, an estimate: air by volumetric efficiency, heat of the fuel less what
 * it keeps as CO and H2 for want of air, a burn that starts some time after the spark, Wiebe's curve, Woschni's loss.
 *
 * Refuses figures not above 0, an intake that closes outside 0 to 120 deg after bottom, a spark before that, lambda
 * outside 0.5 to 2. Left out: what evaporating fuel cools the charge by, the turbine's back pressure in the residual, gas past
 * the rings, dissociation, one cycle differing from the next, and heat from the walls into the last gas to burn.
 */
export const fullLoadCycle = keepingRecent(run, keyOf, capacity);

function run(engine: FullLoad): CycleTrace {
	const start = trapped(engine);
	const { charge, pressure, temperature, heat } = start;
	const shut = engine.intakeCloses - 180;
	within('angle of the spark', -engine.advance, shut, exhaustOpens);
	const { delay, duration, power } = burnOf(engine, start);
	const lit = Math.min(exhaustOpens, -engine.advance + delay);
	return closedCycle({
		cylinder: engine.cylinder,
		speed: engine.speed,
		shut,
		opens: exhaustOpens,
		toPeak: engine.toPeak,
		pressure,
		temperature,
		charge,
		burn: { start: lit, duration, heat, power },
		walls: { temperature: wallTemperature, film: 'woschni' },
	});
}
