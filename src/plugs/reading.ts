import { bind } from '../expressions/bind.ts';
import { namesIn, type Outcome } from '../expressions/tree.ts';
import type { PlugHalf } from '../sheet/plugs.ts';
import { type Circuit, controllerPlace, type Vocabulary } from './circuit.ts';
import { type ReadHalf, readHalf } from './half.ts';
import { type Mirrored, mirroredReading } from './mirrored.ts';
import { type Through, throughPlugs } from './needed.ts';
import { type Pair, pairUp } from './pairs.ts';
import { type Row, rowsOf } from './rows.ts';

/** The value of an answer. */
export type Answered = (id: string) => Outcome;

/** A pair of halves with its rows, and whether one of them was read the wrong way round. */
export interface ReadPair extends Pair {
	readonly rows: readonly Row[];
	readonly mirrored: Mirrored | null;
}

/** Everything that the halves of a sheet come to. */
export interface Reading {
	readonly vocabulary: Vocabulary;
	readonly halves: readonly ReadHalf[];
	readonly pairs: readonly ReadPair[];
	readonly alone: readonly ReadHalf[];
	readonly through: readonly Through[];
	readonly answered: Answered;
}

/** Holds the halves of a sheet against each other; null without any. */
export function readPlugs(
	plugs: readonly PlugHalf[] | undefined,
	vocabulary: Vocabulary,
	answered: Answered,
): Reading | null {
	if (!plugs || plugs.length === 0) return null;
	const halves = plugs.map(half => readHalf(half, vocabulary));
	const { pairs, alone } = pairUp(halves);
	const known = new Map<Circuit, boolean | undefined>();
	const needed = (circuit: Circuit): boolean | undefined => {
		if (!known.has(circuit)) known.set(circuit, needs(circuit, answered));
		return known.get(circuit);
	};
	const place = answered(controllerPlace);
	return {
		vocabulary,
		halves,
		pairs: pairs.map(pair => ({ ...pair, rows: rowsOf(pair, vocabulary, needed), mirrored: mirroredReading(pair) })),
		alone,
		through: throughPlugs(vocabulary.circuits, {
			pairs,
			alone,
			needed,
			decidedBy: ({ required }) =>
				required ? [...namesIn(required)].filter(id => answered(id) === undefined).sort() : [],
			place: typeof place === 'string' ? place : undefined,
		}),
		answered,
	};
}

/** In three values: what does not apply here is not needed. */
function needs({ required }: Circuit, answered: Answered): boolean | undefined {
	if (required === null) return false;
	const outcome = bind(required, name => () => answered(name))();
	return outcome === undefined ? undefined : outcome === true;
}

/** A circuit's current, A, and its length one way, m: as answered, else usual; null where neither. */
export const loadOf = ({ loadFrom, load }: Circuit, answered: Answered): number | null =>
	numberIn(loadFrom, answered) ?? load;
export const lengthOf = ({ lengthFrom, length }: Circuit, answered: Answered): number | null =>
	numberIn(lengthFrom, answered) ?? length;

function numberIn(id: string | null, answered: Answered): number | null {
	const value = id === null ? null : answered(id);
	return typeof value === 'number' ? value : null;
}
