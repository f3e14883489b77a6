import { positive, within } from './range.ts';

/** What the flame runs through: unburnt gas and the chamber about it, at one crank angle. */
export interface Flame {
	/** Pa absolute and K of the unburnt gas. */
	readonly pressure: number;
	readonly temperature: number;
	readonly lambda: number;
	/** Burnt gas in the charge, share by mass, 0 to 0.4. */
	readonly residual: number;
	/** Ethanol in the fuel, share by volume. */
	readonly ethanol: number;
}

/**
 * Laminar burning velocity of a gasoline charge, m/s; ethanol raises it by 1 + 0.07 x^0.35.
 *
 * Fitted for lambda 0.63 to 1.4, 1 to 8 bar, 350 to 550 K, residual to 30 %; beyond that extrapolated, lambda held at its ends.
 * Errors: OutOfRange. Sources: Rhodes & Keck, SAE 850047 (1985), as in Heywood, section 9.3.4; ethanol: Gulder, SAE 841000
 * (1984), fitted to 20 %. Figures from memory.
 */
export function laminarVelocity({ pressure, temperature, lambda, residual, ethanol }: Flame): number {
	positive('pressure', pressure);
	positive('temperature', temperature);
	positive('lambda', lambda);
	within('residual', residual, 0, 0.4);
	within('ethanol share', ethanol, 0, 1);
	const richness = Math.min(1.6, Math.max(0.7, 1 / lambda));
	const cold = 0.305 - 0.549 * (richness - 1.21) ** 2;
	const hotter = (temperature / 298) ** (2.4 - 0.271 * richness ** 3.51);
	const denser = (pressure / 101325) ** (-0.357 + 0.14 * richness ** 2.77);
	return cold * hotter * denser * (1 - 2.06 * residual ** 0.77) * (1 + 0.07 * ethanol ** 0.35);
}

/** Kinematic viscosity of the charge, m2/s: air's 1.85e-5 Pa s at 300 K, rising with T^0.7. Gas constant in J/kgK. */
function viscosity({ pressure, temperature }: Flame, gasConstant: number): number {
	return (1.85e-5 * (temperature / 300) ** 0.7 * gasConstant * temperature) / pressure;
}

/**
 * How long in deg of crank a flame takes for the same share of the charge, at one engine speed and in no unit of its own: it goes
 * with (stroke x viscosity)^1/3 (chamber height / laminar velocity)^2/3 / stroke.
 *
 * Stroke and height (gas volume over piston area) in m. Errors: OutOfRange. Source: after Hires, Tabaczynski & Novak, SAE 780232
 * (1978), as in Heywood, section 14.4 (exponents from memory). Its speed, the third root, is left to `burnOverSpeed`.
 */
export function flameAngle(flame: Flame, stroke: number, height: number): number {
	positive('stroke', stroke);
	positive('height', height);
	const mixing = Math.cbrt(stroke * viscosity(flame, 275));
	return (mixing * Math.cbrt((height / laminarVelocity(flame)) ** 2)) / stroke;
}
