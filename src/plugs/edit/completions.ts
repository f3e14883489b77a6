import { candidatesFor } from '../candidates.ts';
import type { Vocabulary } from '../circuit.ts';
import { namesOf } from '../name-index.ts';
import { recognizerOf } from '../recognize.ts';
import { wordsOf } from '../words.ts';

/** A circuit by its title, with the words of each of its names; those of the title first. */
interface Named {
	readonly title: string;
	readonly names: readonly (readonly string[])[];
}

const known = new WeakMap<Vocabulary, (text: string) => readonly string[]>();
/** As many as one looks through. */
const most = 5;

/** What a half-typed circuit may become, likeliest first; titles, and the words for cavities without one. */
export function completions(vocabulary: Vocabulary, text: string): readonly string[] {
	let find = known.get(vocabulary);
	if (!find) known.set(vocabulary, (find = makeFinder(vocabulary)));
	return find(text);
}

function makeFinder(vocabulary: Vocabulary): (text: string) => readonly string[] {
	const titles = new Map(vocabulary.circuits.map(({ id, title }) => [id, title]));
	const all = vocabulary.circuits.map(
		(circuit): Named => ({ title: circuit.title, names: [circuit.title, ...namesOf(circuit)].map(wordsOf) }),
	);
	const recognize = recognizerOf(vocabulary);
	// A frame asks several times for one text.
	let last: { readonly text: string; readonly found: readonly string[] } = { text: '', found: [] };
	return text => {
		if (last.text !== text) last = { text, found: found(text) };
		return last.found;
	};

	function found(text: string): readonly string[] {
		const typed = wordsOf(text);
		if (typed.length === 0) return [];
		const own = recognize(text);
		const sure =
			own.is === 'circuit'
				? [own.circuit.title]
				: own.is === 'unclear'
					? own.candidates.map(id => titles.get(id)!)
					: [];
		const plain = ['empty', 'spare'].filter(word => word.startsWith(text.trim().toLowerCase()));
		const begun = all
			.flatMap(named => {
				const rank = rankOf(named, typed);
				return rank === null ? [] : [{ title: named.title, rank }];
			})
			.sort((a, b) => a.rank - b.rank)
			.map(({ title }) => title);
		const near = begun.length > 0 ? [] : candidatesFor(vocabulary, text).map(id => titles.get(id)!);
		return [...new Set([...sure, ...plain, ...begun, ...near])].slice(0, most);
	}
}

/** How well the typed words begin those of a circuit's names: its title in this order, in any; another name in this order, in any. */
function rankOf({ names }: Named, typed: readonly string[]): number | null {
	const [title, ...others] = names;
	if (inOrder(title!, typed)) return 0;
	if (inAnyOrder(title!, typed)) return 1;
	if (others.some(words => inOrder(words, typed))) return 2;
	return others.some(words => inAnyOrder(words, typed)) ? 3 : null;
}

const inOrder = (words: readonly string[], typed: readonly string[]): boolean =>
	typed.every((part, at) => words[at]?.startsWith(part));

function inAnyOrder(words: readonly string[], typed: readonly string[]): boolean {
	const left = [...words];
	return typed.every(part => {
		const found = left.findIndex(word => word.startsWith(part));
		if (found >= 0) left.splice(found, 1);
		return found >= 0;
	});
}
