/** Where boost limits are searched, Pa gauge: 0 to 40 psi, or up to the boost at which no fuel enters any more. */
export const boostRange = { from: 0, to: 275790, end: 'boost.most' } as const;

/** Where the limits of an unboosted engine are searched, rpm. */
export const speedRange = { from: 500, to: 10000 } as const;

/** Whether the engine is boosted; null, does not apply, where it is not. */
function boosted(q: { choice(id: string): string | undefined }): boolean | undefined | null {
	const kind = q.choice('boost.kind');
	return kind === undefined ? undefined : kind === 'none' ? null : true;
}

/** What every boost limit has in common: it applies to a boosted engine only. */
export const boostLimitBase = {
	kind: 'pressure',
	inputs: ['boost.kind'],
	source: ['root'],
	nature: 'estimate',
	when: boosted,
} as const;
/** The part of every boost limit's definition that says what is varied. */
export const varyingBoost = { vary: 'boost.target', ...boostRange } as const;
