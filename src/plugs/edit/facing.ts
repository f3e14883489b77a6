import type { PlugHalf } from '../../sheet/plugs.ts';
import type { Vocabulary } from '../circuit.ts';
import { type ReadHalf, type ReadPin, readHalf } from '../half.ts';
import { type Met, meet } from '../meet.ts';
import { type Mirrored, mirroredReading } from '../mirrored.ts';
import { cavities, type Pair, pairUp } from '../pairs.ts';

/** A pin of the half in sight, and what it meets. */
export interface Facing {
	readonly pin: ReadPin;
	/** The pin of the other half that it touches; null: the other half does not list one, or is not given. */
	readonly other: ReadPin | null;
	/** What happens there; null where the halves do not meet pin by pin. */
	readonly met: Met | null;
	/** Where the other half has the same circuit, if not here. */
	readonly elsewhere: string | null;
}

/** A half with each of its pins held against the half that it meets. */
export interface FacingHalf {
	readonly half: ReadHalf;
	/** The half that it meets; null: not given. */
	readonly mate: ReadHalf | null;
	readonly by: 'pin' | 'circuit';
	readonly mirrored: Mirrored | null;
	readonly rows: readonly Facing[];
}

const read = new WeakMap<PlugHalf, ReadHalf>();
const known = new WeakMap<readonly PlugHalf[], Map<number, FacingHalf>>();

/** A half with what each of its pins meets, as the table stands. Worked out once for the same halves. */
export function facing(halves: readonly PlugHalf[], at: number, vocabulary: Vocabulary): FacingHalf {
	let found = known.get(halves);
	if (!found) known.set(halves, (found = new Map()));
	let own = found.get(at);
	if (!own) found.set(at, (own = workOut(halves, at, vocabulary)));
	return own;
}

function reading(half: PlugHalf, vocabulary: Vocabulary): ReadHalf {
	let own = read.get(half);
	if (!own) read.set(half, (own = readHalf(half, vocabulary)));
	return own;
}

function workOut(halves: readonly PlugHalf[], at: number, vocabulary: Vocabulary): FacingHalf {
	const all = halves.map(half => reading(half, vocabulary));
	const half = all[at]!;
	const pair = pairUp(all).pairs.find(({ left, right }) => left === half || right === half);
	if (!pair)
		return {
			half,
			mate: null,
			by: half.raw.mates_by ?? 'pin',
			mirrored: null,
			rows: half.pins.map(pin => ({ pin, other: null, met: null, elsewhere: null })),
		};
	const mate = pair.left === half ? pair.right : pair.left;
	const rows = pair.by === 'pin' ? byPin(pair, half, vocabulary) : byCircuit(half, mate);
	return { half, mate, by: pair.by, mirrored: mirroredReading(pair), rows };
}

function byPin(pair: Pair, half: ReadHalf, vocabulary: Vocabulary): Facing[] {
	const mate = pair.left === half ? pair.right : pair.left;
	const touched = new Map<ReadPin, readonly ReadPin[]>();
	for (const { left, right } of cavities(pair)) {
		const [own, others] = pair.left === half ? [left, right] : [right, left];
		for (const pin of own) touched.set(pin, others);
	}
	return half.pins.map(pin => {
		const others = touched.get(pin) ?? [];
		const other = others.find(one => one.circuit !== null && one.circuit === pin.circuit) ?? others[0] ?? null;
		const met = meet(pin, other, vocabulary);
		const same =
			pin.circuit === null || other?.circuit === pin.circuit
				? undefined
				: mate.pins.find(({ circuit }) => circuit === pin.circuit);
		return { pin, other, met, elsewhere: same?.raw.pin.trim() ?? null };
	});
}

/** Spliced circuit by circuit nothing touches anything: beside it is the wire that it is spliced to. */
const byCircuit = (half: ReadHalf, mate: ReadHalf): Facing[] =>
	half.pins.map(pin => ({
		pin,
		other: (pin.circuit && mate.pins.find(({ circuit }) => circuit === pin.circuit)) ?? null,
		met: null,
		elsewhere: null,
	}));

/** What happens at a pin in a word, and how bad it is; null: nothing to say. */
export function conflict({
	met,
	elsewhere,
	pin,
}: Facing): { readonly word: string; readonly bad: 'person' | 'engine' | 'strands' | null } | null {
	if (met === null || met.meeting === 'same') return null;
	if (met.meeting === 'burns' || met.meeting === 'kills' || met.meeting === 'wrong') {
		const bad = met.harm === 'person' || met.harm === 'engine' ? met.harm : 'strands';
		return { word: met.meeting, bad };
	}
	if (elsewhere !== null) return { word: `to ${elsewhere}`, bad: null };
	return met.meeting === 'unknown' && pin.recognized.is !== 'empty' ? { word: '?', bad: null } : null;
}
