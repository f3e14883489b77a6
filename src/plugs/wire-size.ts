import { ampacity } from '../physics/ampacity.ts';
import { largestFuse, wireFor } from '../physics/fuse.ts';
import { allowedDrop, gaugeArea, wireDrop } from '../physics/wire.ts';
import type { Circuit } from './circuit.ts';
import { isFeed } from './half.ts';
import { type Answered, lengthOf, loadOf } from './reading.ts';

/** A wire to add: gauge (0000 is -3), length one way in m, fuse in A or none. */
export interface Wire {
	readonly gauge: number;
	readonly length: number;
	readonly fuse: number | null;
}

/** A length where nothing says another: 6 ft, from the plug to the other end of an engine bay. */
const usualLength = 1.8288;
/** Signals carry next to nothing; nobody runs thinner than this by hand. */
const thinnest = 18;
/** What counts as a signal, A: no wire that can be crimped by hand is too thin for it. */
export const signalLoad = 0.5;

/** The wire for a circuit, by ampacity and loss. Undefined: none up to 0000 is thick enough. */
export function wireOf(circuit: Circuit, answered: Answered): Wire | undefined {
	const load = loadOf(circuit, answered) ?? 0.1;
	const length = lengthOf(circuit, answered) ?? usualLength;
	const found = load <= signalLoad ? { gauge: thinnest, fuse: 5 } : wireFor(load, length, allowedDrop);
	return found && { gauge: found.gauge, length, fuse: isFeed(circuit.sort) ? (circuit.fuse ?? found.fuse) : null };
}

/**
 * Whether a wire is too thin for its circuit: it loses more than allowed, or carries more than its size bears. Null where
 * there is nothing to judge: a signal, a load that is not known.
 */
export function isThin(area: number, circuit: Circuit, answered: Answered): boolean | null {
	const load = loadOf(circuit, answered);
	if (load === null) return null;
	if (load <= signalLoad) return false;
	const length = lengthOf(circuit, answered) ?? usualLength;
	// The table begins at 18 AWG: a thinner wire carries less than its 20 A by its share of copper.
	const bears = ampacity(area) ?? (20 * area) / gaugeArea(18);
	return wireDrop(load, area, length) > allowedDrop || load > largestFuse(bears);
}

/** The largest fuse that a wire bears, A. */
export const fuseFor = (area: number): number => largestFuse(ampacity(area) ?? (20 * area) / gaugeArea(18));
