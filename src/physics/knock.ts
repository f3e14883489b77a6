import { standardPressure } from './constants.ts';
import type { CycleTrace } from './cycle.ts';
import { positive, within } from './range.ts';

/**
 * How long a gasoline mixture stands a pressure and temperature before it goes off by itself, s: 0.01768 (RON/100)^3.402
 * p^-1.7 exp(3800/T), p in atm.
 *
 * RON 60 to 120 (fitted on 80 to 100); Pa absolute and K, above 0. Made for gasoline: not for E85.
 * Source: Douaud & Eyzat, Four-Octane-Number Method, SAE 780080 (1978), as in Heywood, Internal Combustion Engine
 * Fundamentals, section 9.6 (figures from memory, seen quoted under that name; the paper was not opened).
 */
export function inductionTime(ron: number, pressure: number, temperature: number): number {
	positive('pressure', pressure);
	positive('temperature', temperature);
	return octaneFactor(ron) / autoignitionRate(pressure, temperature);
}

/** What pressure, Pa absolute, and temperature, K, bring to it: `octaneFactor` over the induction time. */
const autoignitionRate = (pressure: number, temperature: number): number =>
	Math.exp(1.7 * Math.log(pressure / standardPressure) - 3800 / temperature);

/** What the fuel brings to the induction time, s. */
function octaneFactor(ron: number): number {
	within('octane number', ron, 60, 120);
	return 0.01768 * (ron / 100) ** 3.402;
}

/**
 * Share of the end gas's induction time used up before the flame has 90 % of the charge: at 1 it knocks.
 *
 * The trace is a cycle's, the speed its rpm. Octane as in `inductionTime`. Summed by trapezoids from valves shut; at the
 * usual step within 0.5 %. With the usual burn it rises with advance to 32 deg, from 2000 rpm up, and falls again past some
 * 36, where the flame is through before the piston squeezes most: look for a limit on the rising side alone.
 * Source: Livengood & Wu, Fifth Symposium on Combustion (1955); estimate, read it with `knockBand`.
 */
export function knockIntegral(trace: CycleTrace, speed: number, ron: number): number {
	positive('speed', speed);
	const { angle, pressure, endGas } = trace;
	let sum = 0;
	let before = autoignitionRate(pressure[0]!, endGas[0]!);
	for (let i = 1; i <= trace.ninety; i++) {
		const now = autoignitionRate(pressure[i]!, endGas[i]!);
		sum += ((before + now) / 2) * (angle[i]! - angle[i - 1]!);
		before = now;
	}
	return sum / (6 * speed * octaneFactor(ron));
}

/** What the integral may really be, times: the correlation's spread over engines and fuels. Common practice. */
export const knockBand = { low: 0.6, high: 1.6 } as const;
