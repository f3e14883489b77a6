import type { Circuit, Vocabulary } from './circuit.ts';
import { bagger } from './words.ts';

/** What a text in a table of pins stands for. `candidates` are circuit ids where it could be several. */
export type Recognized =
	| { readonly is: 'circuit'; readonly circuit: Circuit }
	| { readonly is: 'empty' | 'spare' | 'blank' }
	| { readonly is: 'unclear' | 'strange'; readonly candidates: readonly string[] };

export type Recognizer = (text: string) => Recognized;

const blanks = ['', '-', '?', '??', '???', 'not known', 'unknown', 'n a', 'tbd'];
const empties = [
	'empty',
	'no terminal',
	'not used empty',
	'no pin',
	'blank cavity',
	'empty cavity',
	'vacant',
	'plugged',
];
const spares = ['spare', 'not used', 'unused', 'spare wire', 'nc', 'not connected', 'no connection'];

const known = new WeakMap<Vocabulary, Recognizer>();

/**
 * Recognizes a circuit by its id, its title, a synonym, an abbreviation, in any order of words. A name that is misspelled,
 * or that stands for more than one circuit, is never taken.
 */
export function recognizerOf(vocabulary: Vocabulary): Recognizer {
	let made = known.get(vocabulary);
	if (!made) known.set(vocabulary, (made = makeRecognizer(vocabulary)));
	return made;
}

function makeRecognizer({ circuits, index, ...spelling }: Vocabulary): Recognizer {
	const bag = bagger(spelling);
	const ids = new Map(circuits.map(circuit => [circuit.id, circuit]));
	const [whole, bare, unclear] = [new Map(index.whole), new Map(index.bare), new Map(index.unclear)];
	const airbag = ids.get('airbag');
	return text => {
		const plain = text
			.toLowerCase()
			.replace(/[^\p{L}\p{N}?-]+/gu, ' ')
			.trim();
		if (blanks.includes(plain)) return { is: 'blank' };
		if (empties.includes(plain)) return { is: 'empty' };
		if (spares.includes(plain)) return { is: 'spare' };
		const own = ids.get(text.trim().toLowerCase());
		if (own) return { is: 'circuit', circuit: own };
		const words = bag(text);
		// Whatever else stands there: nobody puts a meter on it.
		if (airbag && isAirbag(text)) return { is: 'circuit', circuit: airbag };
		const several = whole.has(words.whole) ? undefined : unclear.get(words.whole);
		if (several) return { is: 'unclear', candidates: several };
		const candidates = whole.get(words.whole) ?? bare.get(words.bare) ?? [];
		const [only, ...others] = candidates;
		if (only === undefined) return { is: 'strange', candidates };
		return others.length > 0 ? { is: 'unclear', candidates } : { is: 'circuit', circuit: ids.get(only)! };
	};
}

/** Whether a text speaks of an airbag: then nothing at that pin is metered. */
export const isAirbag = (text: string): boolean =>
	/\bair\W?bags?\b|\bsrs\b|\brestraints?\b|\bpretensioners?\b/i.test(text);
