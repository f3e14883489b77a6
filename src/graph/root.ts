import { type Known, nearRoot, runsOut, type Spare } from '../physics/solve.ts';
import { evaluationOn } from './evaluation.ts';
import { type Evaluation, slotNamed } from './graph.ts';
import type { LimitDefinition, LimitNode } from './limit.ts';
import type { State } from './solve.ts';

interface Straight {
	/** Where it is; outside what is looked at when it lies there by a straight line. */
	readonly at: number;
	/** Of what is spare, per unit of what is varied; never 0. */
	readonly slope: number;
}

/** A limit as it stands on the nominal values: where from, and how fast what is spare changes there. */
export interface Root extends Straight {
	/** The same from the nominal value of what is varied to the root. */
	readonly chord: number;
}

/** The step that slopes are measured with, as a share of what is looked at. */
const share = 1 / 1000;

/** The share of what is looked at to which a draw finds a limit: far under the width of any band. */
export const coarse = 1e-4;

/** The root of a solved limit; null where it has none, or what is spare does not change there. */
export function rootOf(state: State, node: LimitNode): Root | null {
	const slot = slotNamed(state.graph, node.id);
	const root = state.values[slot];
	if (typeof root !== 'number') return null;
	const at = evaluationOn(state);
	const to = node.farthest(at);
	const here = node.here(at);
	return node.withSpare(at, spare => {
		const found = straightened(spare, node.limit, to, root, state.bounds.has(slot));
		const step = share * (to - node.limit.from);
		const inside = Math.min(root, to - step);
		// Flat before it and not after: a step, which no slope leads to.
		const flat =
			found &&
			!node.expensive &&
			inside > node.limit.from &&
			spare(Math.max(node.limit.from, inside - step)) === spare(inside);
		return flat || !found ? null : { ...found, chord: chordTo(found, here, to - node.limit.from) };
	});
}

/** Too near each other the two places say no more than the slope. */
function chordTo({ at, slope }: Straight, here: Known | null, span: number): number {
	return here && here.spare !== 0 && Math.abs(at - here.at) > share * span ? here.spare / (here.at - at) : slope;
}

/** A place where a limit was found, with the slope there; where it is only a bound, a straight line leads on outside. */
export function straightened(
	spare: Spare,
	{ from }: LimitDefinition,
	to: number,
	found: number,
	bounded: boolean,
): Straight | null {
	const step = share * (to - from);
	const inside = Math.min(found, to - step);
	const [here, next] = [spare(inside), spare(inside + step)];
	if (here === undefined || next === undefined || here === next) return null;
	const slope = (next - here) / step;
	return { at: bounded ? inside - here / slope : found, slope };
}

/**
 * A limit on the values of a draw. What is spare at the draw's own value of what is varied is worked out already, and from there
 * the limit lies about as far as on the nominal values: a step or two settle it. `isStep`: what is spare jumps where the limit
 * lies on the nominal values; then it is looked for as closely as there, so that its band holds it.
 */
export function drawnLimit(
	at: Evaluation,
	node: LimitNode,
	root: Root | null,
	isStep = root === null,
): number | undefined {
	const { from } = node.limit;
	const to = node.farthest(at);
	const here = node.here(at);
	const start = root && here ? { at: here.at, spare: here.spare, chord: root.chord } : undefined;
	const guess = start ? start.at - start.spare / start.chord : (root?.at ?? (here && here.spare > 0 ? to : Number.NaN));
	return node.withSpare(at, spare => {
		if (root && guess > from && guess < to) {
			const near = nearRoot(spare, guess, root.slope, from, to, coarse, start);
			if (near !== undefined) return near;
		}
		// Where a straight line leads on outside, it is at that end as long as the sign there agrees.
		if (guess >= to && Number(spare(to)) > 0) return to;
		if (guess <= from && Number(spare(from)) < 0) return from;
		return runsOut(spare, from, to, root?.at, isStep ? undefined : coarse)?.value;
	});
}
