/** How the ratio of specific heats falls with temperature: `cold` - `slope` T, never under `least`. Slope 0 keeps it constant. */
export interface GammaFit {
	readonly cold: number;
	/** Per K. */
	readonly slope: number;
	readonly least: number;
}

/**
 * Charge and burnt gas of a petrol engine near stoichiometric, 300 to 2360 K; above that held at 1.20.
 *
 * Source: the linear fit of Gatowski et al., Heat Release Analysis of Engine Pressure Data, SAE 841359 (1984); the figures
 * are from memory and were seen quoted under that name, the paper itself was not opened. The floor is this project's.
 */
export const petrolGamma: GammaFit = { cold: 1.392, slope: 8.13e-5, least: 1.2 };

/** Ratio of specific heats at a temperature in K. */
export function gammaAt(fit: GammaFit, temperature: number): number {
	return Math.max(fit.least, fit.cold - fit.slope * temperature);
}
