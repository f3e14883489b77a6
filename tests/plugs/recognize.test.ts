import { describe, expect, test } from 'vitest';
import { candidatesFor } from '../../src/plugs/candidates.ts';
import { namesOf } from '../../src/plugs/name-index.ts';
import { preparedNames } from '../../src/plugs/name-search.ts';
import { recognizerOf } from '../../src/plugs/recognize.ts';
import { seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { testModel } from '../support/model.ts';
import { misspelled, written } from './names.ts';

const { vocabulary } = testModel().rulebook;
const recognize = recognizerOf(vocabulary);
const taken = (text: string): string | null => {
	const found = recognize(text);
	return found.is === 'circuit' ? found.circuit.id : null;
};
const pairs = (names: typeof written) =>
	Object.entries(names).flatMap(([id, texts]) => texts.map(text => [text, id] as const));
const right = pairs(written);
const wrong = pairs(misspelled);

describe('circuits are recognized by what people write', () => {
	test('of the names here there are 400', () => {
		expect(right.length + wrong.length).toBeGreaterThanOrEqual(400);
	});

	test('95 of 100 rightly written names are taken, none for another circuit', () => {
		const other = right.filter(([text, id]) => taken(text) !== null && taken(text) !== id);
		expect(other).toEqual([]);
		const left = right.filter(([text]) => taken(text) === null).map(([text]) => text);
		expect(left.length, left.join('; ')).toBeLessThanOrEqual(right.length * 0.05);
	});

	test('a misspelled name is never taken; of those offered the right one comes first in 95 of 100', () => {
		expect(wrong.filter(([text]) => taken(text) !== null)).toEqual([]);
		const later = wrong.filter(([text, id]) => candidatesFor(vocabulary, text)[0] !== id).map(([text]) => text);
		expect(later.length, later.join('; ')).toBeLessThanOrEqual(wrong.length * 0.05);
	});

	test('a slip of the finger in any name: never another circuit, the right one first in 95 of 100', () => {
		const random = chance(seed);
		const long = right.filter(([text]) => /[a-z]{6}/i.test(text) && !/\d/.test(text));
		const slips = long.flatMap(([text, id]) => [0, 1].map(() => [slip(text, random), id] as const));
		const made = slips.filter(([text]) => !right.some(([other]) => other === text));
		expect(made.length).toBeGreaterThan(200);
		expect(made.filter(([text, id]) => taken(text) !== null && taken(text) !== id)).toEqual([]);
		const later = made
			.filter(([text, id]) => !candidatesFor(vocabulary, text).slice(0, 1).includes(id))
			.map(([text, id]) => `${text} (${id})`);
		expect(later.length, later.join('; ')).toBeLessThanOrEqual(made.length * 0.05);
	});

	test('every id, title and synonym of the rulebook names its circuit, and no name that is unclear is taken', () => {
		const lost = vocabulary.circuits.flatMap(circuit => namesOf(circuit).filter(name => taken(name) !== circuit.id));
		expect(lost).toEqual([]);
		const unclear = vocabulary.unclear.flatMap(({ names }) => names);
		expect(unclear.filter(name => taken(name) !== null)).toEqual([]);
	});

	test.each(['FP', 'coil 1', 'HO2S', 'injector', 'ground', '12 V', 'O2', 'O2 sensor', 'GND'])(
		'%s is more than one circuit: it is not taken, and they are offered',
		text => {
			const found = recognize(text);
			expect(found.is).toBe('unclear');
			expect(candidatesFor(vocabulary, text).length).toBeGreaterThan(1);
		},
	);

	test.each([
		['', 'blank'],
		['?', 'blank'],
		['empty', 'empty'],
		['Spare', 'spare'],
		['not used', 'spare'],
		['dome lamp', 'strange'],
	])('"%s" is %s', (text, is) => {
		expect(recognize(text).is).toBe(is);
	});
});

test('names prepared by the build offer the same circuits in the same order', () => {
	const built = { ...vocabulary, search: preparedNames(vocabulary) };
	const cut = vocabulary.circuits.flatMap(namesOf).filter((_, index) => index % 12 === 0);
	for (const text of ['APP', ...cut.map(name => name.slice(0, -1))])
		expect(candidatesFor(built, text), text).toEqual(candidatesFor(vocabulary, text));
});

/** Two neighbours swapped, a letter left out, doubled or replaced, in the longest word. */
function slip(text: string, random: ReturnType<typeof chance>): string {
	const word = text.split(/[^a-z]+/i).sort((a, b) => b.length - a.length)[0]!;
	const at = text.indexOf(word) + 1 + Math.floor(random() * (word.length - 2));
	const [before, here, after] = [text.slice(0, at), text[at]!, text.slice(at + 1)];
	switch (Math.floor(random() * 4)) {
		case 0:
			return before + after[0] + here + after.slice(1);
		case 1:
			return before + after;
		case 2:
			return before + here + here + after;
		default:
			return `${before}${here === 'x' ? 'z' : 'x'}${after}`;
	}
}
