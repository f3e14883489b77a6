import type { Kind } from '../../units/kinds.ts';
import type { Type } from './names.ts';

/** Kinds that are bare numbers and go together. */
const isBare = (kind: Kind): boolean => kind === 'ratio' || kind === 'count';

/** The common type of two, or null when they are not alike. Of two choices it is one of either's. */
export function same(a: Type, b: Type): Type | null {
	if (a.is === 'number') return b.is === 'number' && sameKind(a.kind, b.kind) ? a : null;
	if (a.is === 'yes-no' || b.is === 'yes-no' || b.is === 'number') return a.is === b.is ? a : null;
	if (a.is !== b.is) return null;
	return { is: a.is, choices: a.choices && b.choices && [...new Set([...a.choices, ...b.choices])] };
}

const sameKind = (a: Kind, b: Kind): boolean => a === b || (isBare(a) && isBare(b));

/** What a sum of two kinds is; a difference may be added to a temperature or to an absolute pressure. */
export function sumOf(a: Kind, b: Kind): Kind | null {
	if (a === 'temperature' && b === 'temperature-difference') return a;
	if (a === 'absolute-pressure' && b === 'pressure') return a;
	if (a === 'temperature' || a === 'absolute-pressure') return null;
	return sameKind(a, b) ? a : null;
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

/**
 * A text that cannot be what it is compared with, and what that may be; null when the two agree.
 * A written text must be one of the other side's choices; the choices of two questions must have one in common.
 */
export function agree(a: Type, b: Type): { text: string; offered: readonly string[] } | null {
	if (!('choices' in a && 'choices' in b) || !a.choices || !b.choices || (a.written && b.written)) return null;
	const [texts, offered] = a.written ? [a.choices, b.choices] : [b.choices, a.choices];
	const strange = texts.filter(text => !offered.includes(text));
	const [first] = strange;
	const enough = a.written || b.written ? first === undefined : strange.length < texts.length;
	// A question whose choices could not be read has none; it was reported already.
	return enough || first === undefined ? null : { text: first, offered };
}
