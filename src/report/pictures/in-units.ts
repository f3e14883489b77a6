import { fromCanonical, toCanonical } from '../../units/unit.ts';
import { unitFor } from '../../wording/format.ts';
import type { Wording } from '../../wording/template.ts';

/** Turns a quantity's numbers into the person's units, so that an axis has round figures, and writes them. */
export function inUnits(wording: Wording, id: string): { of(kept: number): number; show(typed: number): string } {
	const unit = unitFor(wording.what(id, null), wording.units);
	return {
		of: kept => (unit ? fromCanonical(kept, unit) : kept),
		show: typed => wording.show(id, unit ? toCanonical(typed, unit) : typed) ?? String(typed),
	};
}
