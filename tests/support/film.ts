import { cylinderShare, speedShare, volumeShare } from '../../src/physics/woschni.ts';

/** Woschni's film coefficient, W/m2K, put together as a cycle does: bore in m, Pa absolute, K, gas speed in m/s, in whatever mass of gas. */
export function film(bore: number, pressure: number, temperature: number, gasSpeed: number): number {
	const massTimesR = 0.3;
	const volume = (massTimesR * temperature) / pressure;
	return cylinderShare(bore, massTimesR) * volumeShare(Math.log(volume)) * pressure ** 0.25 * speedShare(gasSpeed);
}
