import type { ReadHalf, ReadPin } from '../half.ts';
import type { Reading, ReadPair } from '../reading.ts';
import type { Sizes } from '../remedy.ts';

/** What a rule about plugs judges: a pin, a circuit, a half. Texts may be missing: a sentence with one is left out. */
export interface Part {
	readonly name: string;
	/** Undefined: not decided. */
	readonly right: boolean | undefined;
	readonly meeting?: string;
	readonly here?: string;
	readonly there?: string;
	readonly reason?: string;
	readonly remedy?: string;
	/** Answers that would decide it. */
	readonly missing?: readonly string[];
	/** Where it fails: stage and harm, if they are worse than the rule's own. */
	readonly stage?: string;
	readonly harm?: string;
}

/** One check: what it finds, part by part. */
export type Check = (reading: Reading, sizes: Sizes) => Part[];

/** The name of a pin in findings: the plug by the name that the half to be repinned gives it. */
export const pinSubject = (plug: string, pin: string): string => `${plug} ${pin}`;

/** The subject of a pin of any half, by the pair that it is in. */
export function subjectOf(pin: ReadPin, half: ReadHalf, pairs: readonly ReadPair[]): string {
	const pair = pairs.find(({ left, right }) => left === half || right === half);
	const row = pair?.rows.find(({ left, right }) => left === pin || right === pin);
	return pinSubject(pair?.left.plug ?? half.plug, row?.pin ?? pin.raw.pin.trim());
}

/** One part a name: what is wrong goes before what cannot be decided, and that before what is right. */
export function oneEach(parts: readonly Part[]): Part[] {
	const found = new Map<string, Part>();
	for (const part of parts) {
		const before = found.get(part.name);
		if (!before || rank(part) < rank(before)) found.set(part.name, part);
	}
	return [...found.values()];
}

const rank = ({ right }: Part): number => (right === false ? 0 : right === undefined ? 1 : 2);

/** The same, or, where there is nothing to say anything of, that the plug is right as a whole. */
export const orRight = (parts: readonly Part[], plug: string): Part[] =>
	parts.length > 0 ? oneEach(parts) : [{ name: plug, right: true }];
