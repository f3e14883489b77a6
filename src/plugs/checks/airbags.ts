import type { ReadHalf } from '../half.ts';
import type { Reading } from '../reading.ts';
import { pinWords } from '../remedy.ts';
import { oneEach, type Part, pinSubject, subjectOf } from './part.ts';

/** Pins of the airbags against what they meet. A half without its other one is undecided. */
export const airbags = ({ pairs, alone }: Reading): Part[] =>
	oneEach([
		...pairs.flatMap(({ left, right, rows }) =>
			rows
				.filter(row => row.left?.airbag || row.right?.airbag)
				.map((row): Part => {
					const { meeting } = row.met;
					const bad = meeting === 'burns' || meeting === 'kills' || meeting === 'wrong';
					return {
						name: pinSubject(left.plug, row.pin),
						right: bad ? false : meeting === 'unknown' ? undefined : true,
						here: pinWords(row.left, left),
						there: pinWords(row.right, right),
					};
				}),
		),
		...alone.flatMap(half =>
			half.pins
				.filter(({ airbag }) => airbag)
				.map((pin): Part => ({ name: subjectOf(pin, half, pairs), right: undefined, here: pinWords(pin, half) })),
		),
	]);

/** The same reading as every other check has it: nothing of the airbags is metered, cut or named anew. */
export function withoutAirbags(reading: Reading): Reading {
	if (!reading.halves.some(({ pins }) => pins.some(({ airbag }) => airbag))) return reading;
	const plain = new Map(
		reading.halves.map((half): [ReadHalf, ReadHalf] => [
			half,
			{ ...half, pins: half.pins.filter(({ airbag }) => !airbag) },
		]),
	);
	return {
		...reading,
		halves: [...plain.values()],
		alone: reading.alone.map(half => plain.get(half)!),
		pairs: reading.pairs.map(pair => ({
			...pair,
			left: plain.get(pair.left)!,
			right: plain.get(pair.right)!,
			rows: pair.rows.filter(({ left, right }) => !left?.airbag && !right?.airbag),
		})),
	};
}
