import type { PlugHalf } from '../sheet/plugs.ts';
import type { UnitSet } from '../sheet/question.ts';
import { unitNamed } from '../units/names.ts';
import { shownUnit } from '../units/shown.ts';
import { toCanonical } from '../units/unit.ts';
import { write } from '../units/write.ts';
import { withoutAirbags } from './checks/airbags.ts';
import { checks } from './checks/all.ts';
import type { Part } from './checks/part.ts';
import type { Vocabulary } from './circuit.ts';
import { type Answered, type Reading, readPlugs } from './reading.ts';
import type { Sizes } from './remedy.ts';

/** The plugs of a sheet, with the parts that rules go through, each check worked out once. */
export interface Plugs {
	readonly reading: Reading;
	readonly sizes: Sizes;
	parts(check: string): readonly Part[];
}

/** Null for a sheet without plugs: no rule about them applies. */
export function plugsOf(
	plugs: readonly PlugHalf[] | undefined,
	vocabulary: Vocabulary,
	answered: Answered,
	units: UnitSet,
): Plugs | null {
	const reading = readPlugs(plugs, vocabulary, answered);
	if (!reading) return null;
	const sizes = sizesIn(units);
	const plain = withoutAirbags(reading);
	const known = new Map<string, readonly Part[]>();
	return {
		reading,
		sizes,
		parts(check) {
			let parts = known.get(check);
			if (!parts) known.set(check, (parts = checks[check]!(check === 'plugs.airbags' ? reading : plain, sizes)));
			return parts;
		},
	};
}

/** How sizes are written in a unit set. */
export function sizesIn(units: UnitSet): Sizes {
	const [length, area] = [unitNamed(units === 'us' ? 'ft' : 'm', ['length'])!, shownUnit('area', units)];
	return {
		length: m => write(m, length),
		gauge: awg => write(toCanonical(awg, unitNamed('AWG', ['area'])!), area),
	};
}
