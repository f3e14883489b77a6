import type { Kind } from './kinds.ts';
import { spellingKey } from './spelling.ts';
import { kinds as everyKind, unitsOf } from './table.ts';
import type { Unit } from './unit.ts';

const spellings = new Map<Kind, ReadonlyMap<string, Unit>>();

/** Made when first asked, so that starting up costs nothing. */
function spellingsOf(kind: Kind): ReadonlyMap<string, Unit> {
	let known = spellings.get(kind);
	if (!known) {
		const names = unitsOf(kind).flatMap(unit =>
			[unit.symbol, ...unit.also].map(name => [spellingKey(name), unit] as const),
		);
		known = new Map(names);
		spellings.set(kind, known);
	}
	return known;
}

const symbols = new Map<Kind, ReadonlyMap<string, Unit>>();

/** Units by their own names, letter for letter: how a sheet mostly spells them. */
function symbolsOf(kind: Kind): ReadonlyMap<string, Unit> {
	let known = symbols.get(kind);
	if (!known) {
		known = new Map(unitsOf(kind).map(unit => [unit.symbol, unit]));
		symbols.set(kind, known);
	}
	return known;
}

/** A lone hyphen or point spells nothing, not even the empty name of a bare count. */
const keyOf = (spelling: string): string => spellingKey(spelling) || spelling;

/**
 * The unit of one of the kinds (any, if none are given) that is spelt so; where several know the spelling, the first.
 * Case, spaces and points do not matter.
 */
export function unitNamed(spelling: string, kinds: readonly Kind[] = everyKind): Unit | undefined {
	let key: string | undefined;
	for (const kind of kinds) {
		const unit = symbolsOf(kind).get(spelling) ?? spellingsOf(kind).get((key ??= keyOf(spelling)));
		if (unit) return unit;
	}
	return undefined;
}

/** The unit that says the same in the other unit set; none where both sets use this one. */
export function partnerOf(unit: Unit): Unit | undefined {
	return unit.partner === undefined ? undefined : unitNamed(unit.partner, [unit.kind]);
}
