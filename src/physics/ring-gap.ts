import { psi } from './constants.ts';
import { positive, within } from './range.ts';

/** What a unit conversion may cost, so that 12 psi typed is 12 psi. */
const rounding = 1e-9;

/** How hard the engine works its rings. `boost` in Pa gauge, 0 without. */
export interface RingDuty {
	readonly boost: number;
	/** Track, strip or towing. */
	readonly hard: boolean;
}

/**
 * Least end gap of a top ring, m: bore x 0.0045 on the street, 0.0050 in hard use, 0.0060 to 12 psi of boost, 0.0070 above.
 *
 * Bore in m, above 0; boost 0 to 40 psi. Common practice; the ring maker's own figure goes before it.
 */
export function ringGapNeeded(bore: number, { boost, hard }: RingDuty): number {
	positive('bore', bore);
	within('boost', boost, 0, 400e3);
	const unboosted = hard ? 0.005 : 0.0045;
	const boosted = boost > 12 * psi * (1 + rounding) ? 0.007 : 0.006;
	return bore * (boost > 0 ? boosted : unboosted);
}
