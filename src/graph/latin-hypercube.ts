import { fnv1a } from './fnv.ts';

/** Points in standard normal coordinates: spread evenly, or draws from what is known of the inputs by then. */
export interface Points {
	/** Writes the coordinates of one point. */
	point(index: number, into: Float64Array): void;
}

/** The most parts that the probability is cut into; more points begin anew. */
const mostParts = 1000;

/**
 * So many points with a coordinate for each name, as standard normal deviates cut at 3 sigma. By itself each coordinate has one
 * point in the middle of each of `count` equal parts of the probability, in an order of its own (Latin hypercube: McKay, Beckman
 * and Conover, Technometrics 21, 1979). The order comes from the name alone: one name more moves no other. `seed`: other orders.
 * Where a name is null nothing is drawn: the coordinate stays as it is.
 */
export function latinHypercube(names: readonly (string | null)[], count: number, seed = 0): Points {
	const parts = Math.max(1, Math.min(count, mostParts));
	const deviates = Float64Array.from({ length: parts }, (_, part) =>
		Math.max(-3, Math.min(3, inverseNormal((part + 0.5) / parts))),
	);
	const columns = names.flatMap((name, dimension): Column[] =>
		name === null ? [] : [{ dimension, random: uniform(fnv1a(name) ^ seed), column: deviates.slice() }],
	);
	let begun = -1;
	return {
		point(index, into) {
			for (; begun < Math.floor(index / parts); begun++) shuffleAll(columns);
			const place = index % parts;
			for (let at = 0; at < columns.length; at++) into[columns[at]!.dimension] = columns[at]!.column[place]!;
		},
	};
}

interface Column {
	readonly dimension: number;
	readonly random: () => number;
	readonly column: Float64Array;
}

function shuffleAll(columns: readonly Column[]): void {
	for (const { random, column } of columns) shuffle(column, random);
}

/** Puts a list in any order. */
function shuffle(list: Float64Array, random: () => number): void {
	for (let at = list.length - 1; at > 0; at--) {
		const other = Math.floor(random() * (at + 1));
		const held = list[at]!;
		list[at] = list[other]!;
		list[other] = held;
	}
}

/** Numbers from 0 up to 1, always the same for one seed: a 32-bit counter, mixed by multiplication. */
export function uniform(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
		mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
	};
}

/** The deviate with this share of a standard normal below it; within 4.5e-4. Abramowitz & Stegun 26.2.23. */
function inverseNormal(share: number): number {
	const tail = Math.min(share, 1 - share);
	const t = Math.sqrt(-2 * Math.log(tail));
	const z =
		t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
	return share < 0.5 ? -z : z;
}
