import type { HalfName } from '../sheet/plugs.ts';
import { pinName, type ReadHalf, type ReadPin } from './half.ts';

/** Two halves that meet. `left` is the one that is repinned: the engine's, else the car's. */
export interface Pair {
	readonly left: ReadHalf;
	readonly right: ReadHalf;
	/** By pin, or cut off and spliced circuit by circuit. */
	readonly by: 'pin' | 'circuit';
}

const order: readonly HalfName[] = ['engine', 'car', 'controller'];

/** The halves that meet, and those whose other half is not given. */
export function pairUp(halves: readonly ReadHalf[]): { readonly pairs: Pair[]; readonly alone: ReadHalf[] } {
	const taken = new Set<ReadHalf>();
	const pairs: Pair[] = [];
	for (const half of halves) {
		if (taken.has(half)) continue;
		const other = halves.find(one => one !== half && !taken.has(one) && areMates(half, one));
		if (!other) continue;
		taken.add(half).add(other);
		const [left, right] = order.indexOf(half.half) < order.indexOf(other.half) ? [half, other] : [other, half];
		const by = left.raw.mates_by === 'circuit' || right.raw.mates_by === 'circuit' ? 'circuit' : 'pin';
		pairs.push({ left, right, by });
	}
	return { pairs, alone: halves.filter(half => !taken.has(half)) };
}

const alike = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

function areMates(a: ReadHalf, b: ReadHalf): boolean {
	if (a.half === b.half) return false;
	const [toB, toA] = [a.raw.mates, b.raw.mates];
	if (toB === undefined && toA === undefined) return alike(a.plug, b.plug);
	return (toB === undefined || alike(toB, b.plug)) && (toA === undefined || alike(toA, a.plug));
}

/** A cavity with every line that each half has of it: none where it is not listed, two where it is listed twice. */
export interface Cavity {
	readonly left: readonly ReadPin[];
	readonly right: readonly ReadPin[];
}

/** The cavities of a pair, those of the left half in its order, then those that the right half alone lists. */
export function cavities({ left, right }: Pick<Pair, 'left' | 'right'>): Cavity[] {
	const onRight = new Map<string, ReadPin[]>();
	for (const pin of right.pins) onRight.set(pin.pin, [...(onRight.get(pin.pin) ?? []), pin]);
	// A pin of either half may say by what name the other half knows it.
	const saidByRight = new Map(
		right.pins.flatMap(({ raw, pin }) => (raw.meets ? [[pinName(raw.meets), pin] as const] : [])),
	);
	const byName = new Map<string, { left: ReadPin[]; right: ReadPin[] }>();
	const cavity = (name: string) => {
		let found = byName.get(name);
		if (!found) byName.set(name, (found = { left: [], right: [] }));
		return found;
	};
	const facing = (pin: ReadPin) => (pin.raw.meets ? pinName(pin.raw.meets) : (saidByRight.get(pin.pin) ?? pin.pin));
	for (const pin of left.pins) cavity(facing(pin)).left.push(pin);
	for (const pin of right.pins) cavity(pin.pin).right.push(pin);
	return [...byName.values()];
}
