import type { Kind } from '../../units/kinds.ts';
import type { Type } from './names.ts';

/** Kinds that are bare numbers and go together. */
const isBare = (kind: Kind): boolean => kind === 'ratio' || kind === 'count';

/** The common type of two, or null when they are not alike. */
export function same(a: Type, b: Type): Type | null {
	if (a.is === 'number' && b.is === 'number') {
		if (a.kind === b.kind || (isBare(a.kind) && isBare(b.kind))) return a;
		return null;
	}
	return a.is === b.is ? a : null;
}

/** What a sum of two kinds is; a difference may be added to a temperature or to an absolute pressure. */
export function sumOf(a: Kind, b: Kind): Kind | null {
	if (a === 'temperature' && b === 'temperature-difference') return a;
	if (a === 'absolute-pressure' && b === 'pressure') return a;
	if (a === 'temperature' || a === 'absolute-pressure') return null;
	return a === b || (isBare(a) && isBare(b)) ? a : null;
}

/** What a difference of two kinds is: of two temperatures a temperature difference, of two absolute pressures a pressure. */
export function differenceOf(a: Kind, b: Kind): Kind | null {
	if (a === 'temperature' && b === 'temperature') return 'temperature-difference';
	if (a === 'absolute-pressure' && b === 'absolute-pressure') return 'pressure';
	return sumOf(a, b);
}

/** A product is of one kind with a bare number; anything richer is a quantity. */
export function productOf(a: Kind, b: Kind): Kind | null {
	if (isBare(a)) return b;
	return isBare(b) ? a : null;
}
