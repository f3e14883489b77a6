import type { Declared } from './declared.ts';
import { cranks, cruises, type Episode, idles, keyOns, overruns } from './episodes.ts';
import { type Foot, holding, holdsAt, stretches } from './holds.ts';
import { pulls } from './pulls.ts';
import type { Ticks } from './ticks.ts';

/** Everything that an engine did in some ticks, in the order of time. */
export function findEpisodes(ticks: Ticks, foot: Foot, declared: Declared): Episode[] {
	const holds = holdsAt(ticks, foot, declared);
	const ever = anyOf(holds);
	const found = (bit: number) => ((ever & bit) === 0 ? [] : stretches(ticks, holds, bit));
	return [
		...keyOns(ticks, found(holding.still)),
		...cranks(ticks, found(holding.cranked), declared),
		...idles(ticks, found(holding.idling), declared),
		...cruises(ticks, found(holding.cruising), declared),
		...overruns(ticks, found(holding.lifted), declared),
		...pulls(ticks, found(holding.pulling), declared),
	].sort((a, b) => a.from - b.from);
}

function anyOf(holds: Uint8Array): number {
	let ever = 0;
	for (let tick = 0; tick < holds.length; tick++) ever |= holds[tick]!;
	return ever;
}
