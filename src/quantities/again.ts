import { Inputs } from './inputs.ts';
import { begin, type GivenAnswer, type State, type Telling, tellSlot } from './pass.ts';

/** Slots, each marked with 1 or not with 0. */
export type Marks = Readonly<Uint8Array>;

/** A pass made from the one before it. */
export interface Again {
	readonly state: State;
	/** Slots that something above was changed of, themselves included. */
	readonly touched: Marks;
	/** Of those, the ones that are not what they were: in value, bound, or what they wait for or take for granted. */
	readonly moved: Marks;
}

/**
 * What `solve` comes to, made from the state of another sheet (one in which nothing was replaced): what rests on nothing that
 * moved is taken over. An answer is the same only if it is the same object: sheets that are much alike share what they can.
 */
export function solveAgain(before: State, answers: ReadonlyMap<string, GivenAnswer>): Again {
	const { graph } = before;
	const now = begin(graph, answers);
	const inputs = new Inputs(graph.slotOf, now.values, true);
	const { feeds } = graph;
	const touched = new Uint8Array(graph.nodes.length);
	const moved = new Uint8Array(graph.nodes.length);
	for (const slot of graph.order) {
		const { limit, elsewhere } = graph.nodes[slot]!;
		const other = now.given.get(slot) !== before.given.get(slot);
		if (other || anyMarked(feeds[slot]!, touched)) touched[slot] = 1;
		// What runs other nodes rests on whatever goes into those, answers among them that are not in effect here.
		const fed = limit || elsewhere ? touched[slot] === 1 : other || anyMarked(feeds[slot]!, moved);
		if (fed) tellSlot(now, slot, inputs);
		if (fed && differs(now, before, slot)) moved[slot] = 1;
		else takeOver(now, before, slot);
	}
	return { state: { ...now, replaced: new Set() }, touched, moved };
}

export const anyMarked = (slots: readonly number[], marks: Marks): boolean => slots.some(slot => marks[slot] === 1);

function differs(now: Telling, before: State, slot: number): boolean {
	return !(
		Object.is(now.values[slot], before.values[slot]) &&
		alike(now.missing[slot]!, before.missing[slot]!) &&
		alike(now.assumed[slot]!, before.assumed[slot]!) &&
		now.bounds.get(slot) === before.bounds.get(slot) &&
		now.broken.get(slot) === before.broken.get(slot)
	);
}

const alike = (a: readonly string[], b: readonly string[]): boolean =>
	a === b || (a.length === b.length && a.every((id, index) => id === b[index]));

function takeOver(now: Telling, before: State, slot: number): void {
	now.values[slot] = before.values[slot];
	now.missing[slot] = before.missing[slot]!;
	now.assumed[slot] = before.assumed[slot]!;
	const bound = before.bounds.get(slot);
	if (bound !== undefined) now.bounds.set(slot, bound);
	const broken = before.broken.get(slot);
	if (broken !== undefined) now.broken.set(slot, broken);
}
