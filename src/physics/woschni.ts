/**
 * Woschni's heat transfer between gas and wall: film coefficient 3.26 B^-0.2 p^0.8 T^-0.55 w^0.8, W/m2K, with p in kPa.
 *
 * Source: Woschni, SAE 670931 (1967), as in Heywood, Internal Combustion Engine Fundamentals, eq. 12.51; valves shut.
 */

/** The bore's share of the film coefficient: bore in m, above 0. Worked out once a cycle. */
export const boreShare = (bore: number): number => 3.26 * bore ** -0.2;

/** The gas's share: Pa absolute, K, gas speed in m/s, all above 0. Times `boreShare` it is the film coefficient, W/m2K. */
export const gasShare = (pressure: number, temperature: number, gasSpeed: number): number =>
	Math.exp(0.8 * Math.log((pressure / 1000) * gasSpeed) - 0.55 * Math.log(temperature));

/** Gas speed that the piston makes, per mean piston speed. */
export const pistonShare = 2.28;

/** Gas speed that burning makes, m/s per K: times swept volume x T / (p V) at valves shut x pressure above the motored one. */
export const burningShare = 3.24e-3;
