import MiniSearch, { type Options } from 'minisearch';
import type { Vocabulary } from './circuit.ts';
import { namesOf } from './name-index.ts';
import { wordsOf } from './words.ts';

/** A name that a circuit is known by; `id`: its place among all. */
interface Named {
	readonly id: number;
	readonly circuit: string;
	readonly name: string;
}

const options: Options<Named> = {
	fields: ['name'],
	storeFields: ['circuit'],
	tokenize: wordsOf,
	processTerm: term => term,
	searchOptions: {
		combineWith: 'OR',
		fuzzy: term => (term.length > 3 ? 0.34 : term.length > 2 ? 0.2 : false),
		prefix: term => term.length > 3,
	},
};

/** Searches the names of circuits by words that may be misspelled or cut short. To put in those that the build has prepared takes half as long. */
export function nameSearch({ circuits, search }: Pick<Vocabulary, 'circuits' | 'search'>): MiniSearch<Named> {
	if (search !== undefined) return MiniSearch.loadJSON(search, options);
	const made = new MiniSearch(options);
	const names = circuits.flatMap(circuit => namesOf(circuit).map(name => ({ circuit: circuit.id, name })));
	made.addAll(names.map((row, id) => ({ id, ...row })));
	return made;
}

/** The names as `nameSearch` takes them up. The library lists its terms last to first: turned round, names of one rank keep their order. */
export function preparedNames(vocabulary: Vocabulary): string {
	const search = nameSearch(vocabulary).toJSON();
	return JSON.stringify({ ...search, index: search.index.toReversed() });
}
