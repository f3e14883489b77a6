import { psi } from './constants.ts';
import { within } from './range.ts';

/**
 * Oil pressure that a hot engine wants, Pa gauge: 10 psi per 1000 rpm, never under 6 psi.
 *
 * Speed in rpm, 0 to 12000. Common practice; it asks 7.5 psi at an idle of 750 rpm.
 */
export function oilPressureNeeded(speed: number): number {
	within('engine speed', speed, 0, 12000);
	return Math.max(6, speed / 100) * psi;
}
