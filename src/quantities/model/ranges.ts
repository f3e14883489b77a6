import { boosted } from './boost.ts';

/** Where boost limits are looked for, Pa gauge: 0 to 40 psi, or to the boost at which no fuel enters any more. */
export const boostRange = { from: 0, to: 275790, end: 'boost.most' } as const;

/** Where the limits of an unboosted engine are looked for, rpm. */
export const speedRange = { from: 500, to: 10000 } as const;

/** What a limit of a part starts from: looked for with boost, and only there. */
export const ofBoost = {
	kind: 'pressure',
	inputs: ['boost.kind'],
	source: ['root'],
	nature: 'estimate',
	when: boosted,
} as const;
export const byBoost = { vary: 'boost.target', ...boostRange } as const;
