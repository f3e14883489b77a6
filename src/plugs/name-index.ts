import type { Circuit, NameIndex, Vocabulary } from './circuit.ts';
import { bagger } from './words.ts';

/** The names of a vocabulary, so that a text of a table of pins is looked up. */
export function indexNames({ circuits, unclear, ...words }: Omit<Vocabulary, 'index'>): NameIndex {
	const bag = bagger(words);
	const [whole, bare] = [new Map<string, Set<string>>(), new Map<string, Set<string>>()];
	const note = (into: typeof whole, key: string, id: string) => {
		if (key !== '') into.set(key, (into.get(key) ?? new Set()).add(id));
	};
	for (const circuit of circuits) {
		for (const name of namesOf(circuit)) {
			const found = bag(name);
			note(whole, found.whole, circuit.id);
			note(bare, found.bare, circuit.id);
		}
	}
	return {
		whole: [...whole].map(([key, ids]) => [key, [...ids]]),
		bare: [...bare].map(([key, ids]) => [key, [...ids]]),
		unclear: unclear.flatMap(({ names, circuits }) => names.map(name => [bag(name).whole, circuits] as const)),
	};
}

/** Every name of a circuit, as typed. */
export const namesOf = ({ id, title, synonyms }: Circuit): string[] => [id.replaceAll('-', ' '), title, ...synonyms];
