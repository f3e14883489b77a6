import type { Kind } from './kinds.ts';
import { unitsOf } from './table.ts';

/** Kinds whose name alone would puzzle a reader. */
const plain: Partial<Record<Kind, string>> = {
	pressure: 'a gauge pressure',
	'absolute-pressure': 'an absolute pressure',
	area: 'a wire size or area',
	angle: 'an angle',
	rotation: 'an engine speed',
	velocity: 'a speed',
	ratio: 'a ratio',
	'resistance-per-length': 'a resistance a length',
	days: 'a number of days',
	imbalance: 'an imbalance',
	octane: 'an octane number',
	pulses: 'a number of pulses a distance',
	'energy-per-mass': 'an energy a mass',
	count: 'a bare number without a unit',
};

/** The kind with its article: `a length`, `an octane number`. */
export function kindInWords(kind: Kind): string {
	return plain[kind] ?? `a ${kind.replaceAll('-', ' ')}`;
}

/** What is taken, for a refusal: `a length (in, thou, ft, mm, cm, m, AN)`. */
export function acceptedInWords(kinds: readonly Kind[] | undefined): string {
	return kinds?.map(withUnits).join(' or ') ?? 'a number and its unit';
}

function withUnits(kind: Kind): string {
	const symbols = unitsOf(kind).map(unit => unit.symbol);
	return kind === 'count' ? kindInWords(kind) : `${kindInWords(kind)} (${symbols.join(', ')})`;
}
