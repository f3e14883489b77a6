import type { Outcome } from '../expressions/tree.ts';
import type { Bounded } from './bounded.ts';
import type { Evaluation, Trace } from './graph.ts';

const nothing: readonly string[] = [];

/** A trace in which nothing is noted yet. */
export const emptyTrace = (slots: number): Trace => ({
	missing: new Array<readonly string[]>(slots).fill(nothing),
	assumed: new Array<readonly string[]>(slots).fill(nothing),
	bounds: new Map(),
	broken: new Map(),
});

export const copyOf = ({ missing, assumed, bounds, broken }: Trace): Trace => ({
	missing: missing.slice(),
	assumed: assumed.slice(),
	bounds: new Map(bounds),
	broken: new Map(broken),
});

/** Takes back what was noted of a slot. */
export function clear({ missing, assumed, bounds, broken }: Trace, slot: number): void {
	missing[slot] = nothing;
	assumed[slot] = nothing;
	bounds.delete(slot);
	broken.delete(slot);
}

/**
 * Notes of a slot that was just computed what it lacks or takes for granted, from what its formula read. `own`: the id that
 * is missing where nothing that it read is; null where there is no such id.
 */
export function note(
	{ graph, values, reader }: Evaluation,
	slot: number,
	outcome: Outcome | Bounded,
	{ missing, assumed, broken }: Trace,
	assumes: readonly string[],
	own: string | null = null,
): void {
	const reads = reader.reads!;
	if (outcome === undefined) {
		if (reader.refusal !== null) {
			broken.set(slot, reader.refusal);
			return;
		}
		const lost = reads.find(read => broken.has(read));
		if (lost !== undefined) {
			broken.set(slot, `${graph.nodes[lost]!.id}: ${broken.get(lost)}`);
			return;
		}
		const unknown = reads.filter(read => values[read] === undefined);
		const lacking = unionAt(missing, unknown, nothing).concat(reader.wants);
		missing[slot] = [...new Set(own !== null && lacking.length === 0 ? [own] : lacking)].sort();
	} else if (outcome !== null) {
		assumed[slot] = unionAt(assumed, reads, assumes);
	}
}

/** Several sorted lists as one sorted list without doubles. */
export const union = (lists: readonly (readonly string[])[]): readonly string[] => unionAt(lists, null, nothing);

/** The same of the lists at some slots, and one more. */
function unionAt(
	lists: readonly (readonly string[])[],
	slots: readonly number[] | null,
	more: readonly string[],
): readonly string[] {
	// What hangs together often shares one list.
	let only = more;
	let all: Set<string> | null = null;
	const count = (slots ?? lists).length;
	for (let at = 0; at < count; at++) {
		const list = lists[slots ? slots[at]! : at]!;
		if (list.length === 0 || list === only) continue;
		if (only.length === 0) only = list;
		else {
			all ??= new Set(only);
			for (const id of list) all.add(id);
		}
	}
	return all ? [...all].sort() : only;
}
