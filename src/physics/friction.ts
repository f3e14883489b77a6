import { positive, within } from './range.ts';

/** Reynolds number: speed in m/s (0 or more), bore in m, kinematic viscosity in m2/s. Errors: OutOfRange. Definition. */
export function reynolds(velocity: number, bore: number, viscosity: number): number {
	within('velocity', velocity, 0, Number.MAX_VALUE);
	positive('bore', bore);
	positive('viscosity', viscosity);
	return (velocity * bore) / viscosity;
}

/** Below this the flow is laminar, above the other it is turbulent. Between them nobody can say; see `frictionFactor`. */
const laminarTo = 2000;
const turbulentFrom = 4000;

/**
 * Darcy friction factor of a round pipe: Reynolds number above 0 to 1e9, roughness over bore 0 to 0.05.
 *
 * To 2000 it is 64/Re; from 4000 Colebrook's, solved to 1e-12; between them it runs straight from the one to the other,
 * so that it never jumps: an estimate there. Errors: OutOfRange.
 * Source: Hagen-Poiseuille; Colebrook, J. Inst. Civ. Eng. 11 (1939), as in Crane TP-410.
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
	positive('Reynolds number', reynolds);
	within('Reynolds number', reynolds, 0, 1e9);
	within('relative roughness', relativeRoughness, 0, 0.05);
	if (reynolds <= laminarTo) return 64 / reynolds;
	if (reynolds >= turbulentFrom) return colebrook(reynolds, relativeRoughness);
	const share = (reynolds - laminarTo) / (turbulentFrom - laminarTo);
	return (1 - share) * (64 / laminarTo) + share * colebrook(turbulentFrom, relativeRoughness);
}

/** Newton on x = 1 / sqrt f in x = -2 log10(rough + smooth x), which is so straight that three steps do. */
function colebrook(reynolds: number, relativeRoughness: number): number {
	const rough = relativeRoughness / 3.7;
	const smooth = 2.51 / reynolds;
	let x = -1.8 * Math.log10(6.9 / reynolds + rough ** 1.11); // Haaland's explicit form
	for (let step = 0; step < 10; step++) {
		const inside = rough + smooth * x;
		const change = (x + 2 * Math.log10(inside)) / (1 + (2 / Math.LN10) * (smooth / inside));
		x -= change;
		if (Math.abs(change) < 1e-13 * x) break;
	}
	return 1 / (x * x);
}
