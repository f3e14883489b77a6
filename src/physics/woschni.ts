/**
 * Woschni's heat transfer between gas and wall: film coefficient 3.26 B^-0.2 p^0.8 T^-0.55 w^0.8, W/m2K, with p in kPa.
 *
 * With T = p V / (m R) it is a product of four: what stays the same all cycle, the volume's share, the fourth root of p in Pa
 * and the gas speed's share.
 * Source: Woschni, SAE 670931 (1967), as in Heywood, Internal Combustion Engine Fundamentals, eq. 12.51; valves shut.
 */

/** What stays the same: bore in m, mass times gas constant in J/K, both above 0. */
export const cylinderShare = (bore: number, massTimesR: number): number =>
	3.26 * bore ** -0.2 * massTimesR ** 0.55 * 1000 ** -0.8;

/** The volume's share, by the logarithm of m3. */
export const volumeShare = (logVolume: number): number => Math.exp(-0.55 * logVolume);

/** The gas speed's share: m/s, above 0. */
export const speedShare = (gasSpeed: number): number => Math.exp(0.8 * Math.log(gasSpeed));

/** Gas speed that the piston makes, per mean piston speed. */
export const pistonShare = 2.28;

/** Gas speed that burning makes, m/s per K: times swept volume x T / (p V) at valves shut x pressure above the motored one. */
export const burningShare = 3.24e-3;
