import { type Circuit, controllerPlace, type End } from './circuit.ts';
import type { ReadHalf } from './half.ts';
import type { Pair } from './pairs.ts';
import type { Needed } from './rows.ts';

/** Whether a needed circuit gets through the plugs. `lacks` are answers that would decide it. */
export interface Through {
	readonly circuit: Circuit;
	readonly is: 'through' | 'missing' | 'unknown';
	readonly why: string;
	readonly lacks: readonly string[];
}

interface Given {
	readonly pairs: readonly Pair[];
	readonly alone: readonly ReadHalf[];
	readonly needed: Needed;
	/** The answers that decide whether a circuit is needed. */
	readonly decidedBy: (circuit: Circuit) => readonly string[];
	readonly place: string | undefined;
}

/** What becomes of each circuit that the engine needs, or may need; none that cannot be at any plug that is given. */
export function throughPlugs(circuits: readonly Circuit[], given: Given): Through[] {
	return circuits.flatMap(circuit => {
		const need = given.needed(circuit);
		if (need === false) return [];
		const found = through(circuit, given);
		if (found === null) return [];
		if (need === true || found.is === 'through') return need === true ? [found] : [];
		return [
			{ ...found, is: 'unknown', why: 'Whether this engine needs it is not known.', lacks: given.decidedBy(circuit) },
		];
	});
}

function through(circuit: Circuit, { pairs, alone, place }: Given): Through | null {
	const says = (is: Through['is'], why: string, lacks: readonly string[] = []): Through => ({
		circuit,
		is,
		why,
		lacks,
	});
	const has = (half: ReadHalf) => half.pins.some(pin => pin.circuit === circuit);
	for (const pair of pairs) {
		const [left, right] = [has(pair.left), has(pair.right)];
		if (left === right) continue;
		const [one, other] = left ? [pair.left, pair.right] : [pair.right, pair.left];
		if (facesUnknown(circuit, one, other, pair))
			return says('unknown', `The ${one.half}'s half of ${one.plug} has it; the pin that it meets is not known.`);
		return says('missing', `The ${one.half}'s half of ${one.plug} has it, the ${other.half}'s half has not.`);
	}
	if (pairs.some(({ left, right }) => has(left) && has(right))) return says('through', '');
	const ofController = circuit.ends.includes('controller');
	const withController = pairs.some(({ right }) => right.half === 'controller');
	const crossing = pairs.map(pair => crosses(circuit, pair, place));
	if (alone.some(has) || (alone.length > 0 && pairs.length === 0))
		return says('unknown', 'The other half of its plug is not given.');
	if (ofController && !withController && pairs.length > 0)
		return says(
			'unknown',
			"It may be at the controller's plug, which is not given.",
			crossing.includes(undefined) ? [controllerPlace] : [],
		);
	if (crossing.includes(true)) return says('missing', 'It has to pass a plug that is given, and neither half has it.');
	return crossing.includes(undefined)
		? says('unknown', 'Where the controller sits is not known.', [controllerPlace])
		: null;
}

/** Whether each pin that has the circuit meets one that is not known. */
function facesUnknown(circuit: Circuit, one: ReadHalf, other: ReadHalf, { by }: Pair): boolean {
	if (by === 'circuit') return other.pins.some(({ sort }) => sort === 'unknown');
	const names = one.pins
		.filter(pin => pin.circuit === circuit)
		.map(({ pin, raw }) => (raw.meets ? raw.meets.trim().toUpperCase() : pin));
	return names.some(name => {
		const facing = other.pins.filter(({ pin, raw }) => pin === name || raw.meets?.trim().toUpperCase() === name);
		return facing.length === 0 || facing.some(({ sort }) => sort === 'unknown');
	});
}

/** Whether a circuit has to pass a plug to get from one of its ends to the other; undefined: not known. */
function crosses({ ends }: Circuit, { left, right }: Pair, place: string | undefined): boolean | undefined {
	if (right.half === 'controller') return ends.includes('controller') && ends.some(end => end !== 'controller');
	if (left.half !== 'engine') return undefined;
	const side = (end: End) => {
		if (end !== 'controller') return end === 'engine' || end === 'gearbox' ? 'engine' : 'car';
		return place === 'engine-side' ? 'engine' : place === 'car-side' ? 'car' : undefined;
	};
	const [a, b] = [side(ends[0]), side(ends[1])];
	return a === undefined || b === undefined ? undefined : a !== b;
}
