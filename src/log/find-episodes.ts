import type { Declared } from './declared.ts';
import { type DemandThresholds, engineState, statesAt, stretches } from './engine-states.ts';
import { cranks, cruises, type Episode, idles, keyOns, overruns } from './episodes.ts';
import { pulls } from './pulls.ts';
import type { Ticks } from './ticks.ts';

/** Everything that an engine did in some ticks, in the order of time. */
export function findEpisodes(ticks: Ticks, thresholds: DemandThresholds, declared: Declared): Episode[] {
	const states = statesAt(ticks, thresholds, declared);
	const ever = anyOf(states);
	const found = (bit: number) => ((ever & bit) === 0 ? [] : stretches(ticks, states, bit));
	return [
		...keyOns(ticks, found(engineState.still)),
		...cranks(ticks, found(engineState.cranked), declared),
		...idles(ticks, found(engineState.idling), declared),
		...cruises(ticks, found(engineState.cruising), declared),
		...overruns(ticks, found(engineState.lifted), declared),
		...pulls(ticks, found(engineState.pulling), declared),
	].sort((a, b) => a.from - b.from);
}

function anyOf(states: Uint8Array): number {
	let ever = 0;
	for (let tick = 0; tick < states.length; tick++) ever |= states[tick]!;
	return ever;
}
