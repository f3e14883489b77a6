import type { PlugHalf } from '../sheet/plugs.ts';
import { likeness } from '../text/likeness.ts';
import type { Vocabulary } from './circuit.ts';
import { namesOf } from './name-index.ts';
import { nameSearch } from './name-search.ts';
import { recognizerOf } from './recognize.ts';
import { wordsOf } from './words.ts';

const known = new WeakMap<Vocabulary, (text: string) => string[]>();

/** The circuits that a name which is not taken may stand for, the nearest first; ids. */
export function candidatesFor(vocabulary: Vocabulary, text: string): string[] {
	let find = known.get(vocabulary);
	if (!find) known.set(vocabulary, (find = makeFinder(vocabulary)));
	return find(text);
}

/** The pins whose words are not taken for a circuit, each with what comes nearest; lines for people. */
export function notRecognized({ pins }: PlugHalf, vocabulary: Vocabulary): string[] {
	const titles = new Map(vocabulary.circuits.map(({ id, title }) => [id, title]));
	return pins.flatMap(({ pin, circuit = '', sort }) => {
		const { is } = recognizerOf(vocabulary)(circuit);
		if (sort !== undefined || (is !== 'strange' && is !== 'unclear')) return [];
		const near = candidatesFor(vocabulary, circuit).map(id => titles.get(id)!);
		const offered = near.length === 0 ? '' : `${is === 'unclear' ? '; it could be ' : '; nearest: '}${near.join(', ')}`;
		return [`${pin.trim()}: "${circuit.trim()}" is not recognized${offered}`];
	});
}

/** As many as one looks through. */
const most = 5;

function makeFinder(vocabulary: Vocabulary): (text: string) => string[] {
	const search = nameSearch(vocabulary);
	const names = vocabulary.circuits.flatMap(namesOf);
	const recognize = recognizerOf(vocabulary);
	return text => {
		const plain = recognize(text);
		const sure = plain.is === 'circuit' ? [plain.circuit.id] : plain.is === 'unclear' ? plain.candidates : [];
		const words = wordsOf(text).sort().join(' ');
		// The library finds the names by their words; of those the one with the most letters in common comes first.
		const near = search
			.search(text)
			.slice(0, 60)
			.map(({ id, circuit, score }) => ({
				circuit: circuit as string,
				score,
				like: likeness(
					words,
					wordsOf(names[id as number]!)
						.sort()
						.join(' '),
				),
			}))
			.sort((a, b) => b.like - a.like || b.score - a.score)
			.map(({ circuit }) => circuit);
		return [...new Set([...sure, ...near])].slice(0, most);
	};
}
