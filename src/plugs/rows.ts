import type { Circuit, Vocabulary } from './circuit.ts';
import { isFeed, type ReadPin } from './half.ts';
import { type Met, meet } from './meet.ts';
import { Moves } from './moves.ts';
import { type Cavity, cavities, type Pair } from './pairs.ts';

/** What is done with a wire, on the half that is repinned (`left`) or on the other one. */
export interface Act {
	readonly side: 'left' | 'right';
	readonly kind: 'join' | 'done' | 'move' | 'splice' | 'insulate' | 'add' | 'find-out' | 'leave-alone' | 'takes';
	/** The pin that it goes to, or comes from. */
	readonly pin?: string;
}

/** A cavity, or with `mates_by: circuit` a circuit, of a pair of halves. */
export interface Row {
	readonly pair: Pair;
	readonly pin: string;
	readonly left: ReadPin | null;
	readonly right: ReadPin | null;
	readonly met: Met;
	readonly toPin: string | null;
	readonly acts: readonly Act[];
	/** The circuit that a wire is added for. */
	readonly added: Circuit | null;
}

/** Whether the engine needs a circuit; undefined: not known. */
export type Needed = (circuit: Circuit) => boolean | undefined;

/** The rows of a pair, with the remedy of each. */
export function rowsOf(pair: Pair, vocabulary: Vocabulary, needed: Needed): Row[] {
	if (pair.by === 'circuit') return splicedRows(pair, needed);
	const places = cavities(pair);
	const moves = new Moves(places);
	const free = places.filter(
		({ left, right }) => [...left, ...right].every(isEmpty) && left.length > 0 && right.length > 0,
	);
	return places.flatMap(place =>
		combined(place).map(([left, right]) => rowOf(pair, left, right, { vocabulary, needed, moves, free })),
	);
}

/** Each line of one half against each of the other: a pin that is listed twice is reported twice. */
function combined({ left, right }: Cavity): [ReadPin | null, ReadPin | null][] {
	const [lefts, rights] = [left.length > 0 ? left : [null], right.length > 0 ? right : [null]];
	return lefts.flatMap(a => rights.map((b): [ReadPin | null, ReadPin | null] => [a, b]));
}

const isEmpty = ({ recognized }: ReadPin): boolean => recognized.is === 'empty';
const isKnown = (pin: ReadPin | null): pin is ReadPin => pin !== null && pin.sort !== 'unknown';

interface Context {
	readonly vocabulary: Vocabulary;
	readonly needed: Needed;
	readonly moves: Moves;
	/** Cavities empty on both halves; one is used up by each wire that needs a place. */
	readonly free: Cavity[];
}

function rowOf(pair: Pair, left: ReadPin | null, right: ReadPin | null, context: Context): Row {
	const { moves, vocabulary } = context;
	const found = meet(left, right, vocabulary);
	const elsewhere = (left !== null && moves.to.has(left)) || (right !== null && moves.from.has(right));
	const met = found.meeting === 'nothing' && elsewhere ? { ...found, meeting: 'moved' as const } : found;
	const base = { pair, pin: (left ?? right)!.raw.pin.trim(), left, right, met };
	if (left?.airbag || right?.airbag) {
		const leave = { toPin: null, added: null, acts: [{ side: 'left', kind: 'leave-alone' }] } as const;
		return { ...base, ...leave, met: atAirbag(met) };
	}
	if (met.meeting === 'same') {
		const kind = left?.raw.joined && right?.raw.joined !== false ? 'done' : 'join';
		return { ...base, toPin: null, added: null, acts: [{ side: 'left', kind }] };
	}
	const ofLeft = leftAct(left, right, context);
	const ofRight = rightAct(left, right, context);
	const unknown: Act[] = !isKnown(left) || !isKnown(right) ? [{ side: 'left', kind: 'find-out' }] : [];
	const acts: Act[] = [...ofLeft, ...ofRight, ...unknown].filter(
		(act, at, all) => all.findIndex(({ kind, side }) => kind === act.kind && side === act.side) === at,
	);
	const adding = acts.find(({ kind }) => kind === 'add');
	const added = adding ? (adding.side === 'right' ? left : right)!.circuit : null;
	const goes = acts.find(({ side, kind, pin }) => side === 'left' && pin !== undefined && kind !== 'takes');
	return { ...base, toPin: goes?.pin ?? null, added, acts };
}

/** A wire of the airbags on anything else may fire them, or keep them from firing. */
function atAirbag(met: Met): Met {
	if (met.meeting !== 'burns' && met.meeting !== 'kills' && met.meeting !== 'wrong') return met;
	const why = 'A wire of the airbags meets another: it may fire them, or keep them from firing.';
	return { ...met, why, harm: 'person', stage: 'crank', ifLive: false };
}

/** What becomes of the left half's wire. */
function leftAct(left: ReadPin | null, right: ReadPin | null, { moves, needed, free }: Context): Act[] {
	if (!isKnown(left) || isEmpty(left)) return [];
	const target = moves.to.get(left);
	if (target) return [{ side: 'left', kind: 'move', pin: target.raw.pin.trim() }];
	const { circuit } = left;
	if (circuit && moves.onRight.has(circuit)) {
		const joined = moves.joined.get(circuit);
		// Of a circuit that may stand at one pin alone, nobody knows which of two is meant.
		if (!circuit.shared || !joined) return [{ side: 'left', kind: 'find-out' }];
		return [{ side: 'left', kind: 'splice', pin: joined.raw.pin.trim() }];
	}
	const need = circuit ? needed(circuit) : false;
	if (need === undefined) return [{ side: 'left', kind: 'find-out' }];
	if (!need) return [{ side: 'left', kind: 'insulate' }];
	if (right === null) return [{ side: 'left', kind: 'find-out' }];
	if (isEmpty(right)) return [{ side: 'right', kind: 'add' }];
	const place = free.shift();
	return place
		? [
				{ side: 'left', kind: 'move', pin: place.right[0]!.raw.pin.trim() },
				{ side: 'right', kind: 'add' },
			]
		: [{ side: 'right', kind: 'add' }];
}

/** What becomes of the right half's wire: mostly nothing, or it takes a wire of the left half. */
function rightAct(left: ReadPin | null, right: ReadPin | null, { moves, needed }: Context): Act[] {
	if (!isKnown(right) || isEmpty(right)) return [];
	const from = moves.from.get(right);
	if (from) return [{ side: 'right', kind: 'takes', pin: from.raw.pin.trim() }];
	const { circuit } = right;
	const missing = circuit !== null && !moves.onLeft.has(circuit);
	const need = missing ? needed(circuit) : false;
	if (need === undefined) return [{ side: 'left', kind: 'find-out' }];
	if (need) return isKnown(left) ? [{ side: 'left', kind: 'add' }] : [{ side: 'left', kind: 'find-out' }];
	return isFeed(right.sort) || right.recognized.is === 'spare' ? [{ side: 'right', kind: 'insulate' }] : [];
}

/** One row a circuit: the shells are cut off, and nothing touches anything. */
function splicedRows(pair: Pair, needed: Needed): Row[] {
	const rest = [...pair.right.pins];
	const take = (circuit: Circuit | null) => {
		const at = circuit === null ? -1 : rest.findIndex(pin => pin.circuit === circuit);
		return at < 0 ? null : rest.splice(at, 1)[0]!;
	};
	const rows = pair.left.pins.map(left => splicedRow(pair, left, take(left.circuit), needed));
	return [...rows, ...rest.map(right => splicedRow(pair, null, right, needed))];
}

function splicedRow(pair: Pair, left: ReadPin | null, right: ReadPin | null, needed: Needed): Row {
	const one = (left ?? right)!;
	const both = left !== null && right !== null;
	const side = left ? 'left' : 'right';
	const meeting = both ? 'same' : one.sort === 'unknown' ? 'unknown' : 'nothing';
	const need = one.circuit ? needed(one.circuit) : false;
	const kinds = (): Act[] => {
		if (one.airbag) return [{ side, kind: 'leave-alone' }];
		if (both) return [left.raw.joined ? { side, kind: 'done' } : { side, kind: 'splice', pin: right.raw.pin.trim() }];
		if (isEmpty(one)) return [];
		if (meeting === 'unknown' || need === undefined) return [{ side, kind: 'find-out' }];
		return [need ? { side: left ? 'right' : 'left', kind: 'add' } : { side, kind: 'insulate' }];
	};
	const acts = kinds();
	return {
		pair,
		pin: one.raw.pin.trim(),
		left,
		right,
		met: { meeting, why: '', harm: 'annoys', stage: 'fire', ifLive: false },
		toPin: acts.find(({ kind }) => kind === 'splice')?.pin ?? null,
		acts,
		added: acts.some(({ kind }) => kind === 'add') ? one.circuit : null,
	};
}
