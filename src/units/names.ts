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

/**
 * The unit of one of the kinds (any, if none are given) that is spelt so; where several know the spelling, the first.
 * Case, spaces and points do not matter.
 */
export function unitNamed(spelling: string, kinds: readonly Kind[] = everyKind): Unit | undefined {
	const key = spellingKey(spelling);
	// A lone hyphen or point spells nothing, not even the empty name of a bare count.
	if (key === '' && spelling !== '') return undefined;
	for (const kind of kinds) {
		const unit = spellingsOf(kind).get(key);
		if (unit) return unit;
	}
	return undefined;
}

/** The unit that says the same in the other unit set; none where both sets use this one. */
export function partnerOf(unit: Unit): Unit | undefined {
	return unit.partner === undefined ? undefined : unitNamed(unit.partner, [unit.kind]);
}
