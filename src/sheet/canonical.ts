import type { Outcome } from '../expressions/tree.ts';
import { massFromVolume, volumeFromMass } from '../units/density.ts';
import type { Kind } from '../units/kinds.ts';
import { unitNamed } from '../units/names.ts';
import { toCanonicalRounded, type Unit } from '../units/unit.ts';
import { choicesIn, type Question } from './question.ts';
import type { Answer } from './sheet.ts';

/** An answer's numbers in canonical units. */
export interface CanonicalAnswer {
	readonly value: Outcome;
	/** The numbers are in the other kind of flow: this quantity's value (a density) turns them round. */
	readonly needs: { readonly quantity: string; readonly by: 'times' | 'over' } | null;
	/** What the reading took for granted. */
	readonly assumed: readonly string[];
}

type Pair = readonly [number, number];

/** Turns a checked answer into canonical units. Not known: undefined. */
export function canonicalAnswer(question: Question, answer: Answer): CanonicalAnswer {
	const { value } = answer;
	if (value === undefined || answer.known === 'not-known') return { value: undefined, needs: null, assumed: [] };
	const units = unitsOfAnswer(question, answer);
	const assumed: string[] = [];
	for (const unit of units) if (unit?.assumes !== undefined) assumed.push(unit.assumes);
	const plain = (kept: Outcome): CanonicalAnswer => ({ value: kept, needs: null, assumed });
	switch (question.kind) {
		case 'per-cylinder':
			return plain(
				(value as (number | null)[]).map(reading => (reading === null ? null : toCanonicalRounded(reading, units[0]!))),
			);
		case 'loads':
			return plain((value as [string, number][]).map(([name, load]) => [name, toCanonicalRounded(load, units[0]!)]));
		case 'curve':
			return flowing(question, units[1]!, assumed, by =>
				(value as Pair[]).map(([x, y]) => [toCanonicalRounded(x, units[0]!), by(toCanonicalRounded(y, units[1]!))]),
			);
		case 'several':
			return plain(choicesIn(value));
		default:
			if (typeof value === 'number' && units[0]) {
				const unit = units[0];
				return flowing(question, unit, assumed, by => by(toCanonicalRounded(value, unit)));
			}
			return plain(value as Outcome);
	}
}

/** The other kind of flow, at the density that the question states: a constant now, a quantity when it is known. */
function flowing(
	question: Question,
	unit: Unit,
	assumed: readonly string[],
	make: (by: (flow: number) => number) => Outcome,
): CanonicalAnswer {
	const { takes } = question;
	if (!takes || unit.kind !== takes.kind) return { value: make(flow => flow), needs: null, assumed };
	const toMass = takes.kind === 'volume-flow';
	if (typeof takes.at === 'string') {
		return {
			value: make(flow => flow),
			needs: { quantity: takes.at, by: toMass ? 'times' : 'over' },
			assumed: [...assumed, takes.at],
		};
	}
	const by = toMass ? massFromVolume(takes.at) : volumeFromMass(takes.at);
	return { value: make(by), needs: null, assumed: [...assumed, `${question.id}_density`] };
}

/** The unit of each number in an answer; undefined where the answer is bare. */
export function unitsOfAnswer(question: Question, answer: Answer): (Unit | undefined)[] {
	const words = answer.unit === undefined ? [] : typeof answer.unit === 'string' ? [answer.unit] : answer.unit;
	return question.of.map((kind, index) => {
		const kinds: readonly Kind[] = [
			kind,
			...(question.takes && index === question.of.length - 1 ? [question.takes.kind] : []),
		];
		return unitNamed(words[index] ?? bareUnit(question), kinds);
	});
}

/** The unit a bare number counts in, where a bare number is taken: ratios of 1 and :1, and plain counts. */
function bareUnit(question: Question): string {
	return question.unit.us[0] ?? '1';
}
