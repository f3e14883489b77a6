import { isMap, isPair, isScalar, type Node, visit } from 'yaml';
import type { Term } from '../rulebook.ts';
import type { Fields } from './fields.ts';
import type { Source } from './source.ts';
import { keyName, offsetOf } from './yaml.ts';

/** The words of the trade (rules/words.yaml): each with its meaning and the words that are not used for it. */
export function readTerms(root: Fields): Term[] {
	return root.innerList('words').map(inner => {
		const term = {
			term: inner.text('term'),
			meaning: inner.text('meaning'),
			not: inner.texts('not', false),
			except: inner.texts('except', false),
		};
		inner.refuseRest();
		return term;
	});
}

/** Finds the first word of a text that the glossary has another for. Ids (fuel.vapour, petrol-e10) are no words. */
export function wordFinder(terms: readonly Term[]): (text: string) => { found: string; term: string } | null {
	const owner = new Map(terms.flatMap(({ term, not }) => not.map(word => [word.toLowerCase(), term] as const)));
	const spared = terms.flatMap(({ except }) => except);
	if (owner.size === 0) return () => null;
	const alternatives = (words: Iterable<string>) => [...words].sort((a, b) => b.length - a.length).join('|');
	const pattern = new RegExp(
		`(?<![\\w./-])(?:${spared.length > 0 ? `(?:${alternatives(spared)})|` : ''}(${alternatives(owner.keys())}))(?![\\w/]|[-.]\\w|_)`,
		'gi',
	);
	return text => {
		for (const [, found] of text.matchAll(pattern))
			if (found !== undefined) return { found, term: owner.get(found.toLowerCase())! };
		return null;
	};
}

/** Fields that hold ids and expressions, not words. */
const noWords = new Set([
	'id',
	'applies',
	'holds',
	'ask_when',
	'quick_when',
	'when',
	'only_when',
	'thresholds',
	'usual',
	'examples',
	'unit',
	'cautions',
	'relies',
	'rules',
	'each',
	'names',
	'abbreviations',
	'filler',
	'also',
	'circuits',
	'required',
	'synonyms',
	'ends',
	'if_missing',
	'pins',
	'not',
	'except',
]);

/** Notes every text of a rule file that uses a word which the glossary has another for; in a pack that is advice. */
export function refuseWords(source: Source, find: ReturnType<typeof wordFinder>): void {
	if (!source.root) return;
	visit(source.root, {
		Pair: (_, pair) => {
			const key = keyName(pair.key) ?? '';
			if (!noWords.has(key)) return undefined;
			// `rules:` and `circuits:` hold mappings at the top of a file, and lists of ids elsewhere.
			const holdsMappings = (pair.value as { items?: unknown[] } | null)?.items?.some(isMap) ?? false;
			return (key === 'rules' || key === 'circuits') && holdsMappings ? undefined : visit.SKIP;
		},
		Scalar: (key, node, path) => {
			const parent = path.at(-1);
			if (typeof node.value !== 'string' || (key === 'key' && isPair(parent))) return;
			const wrong = find(node.value);
			if (wrong && isScalar(node as Node) && !isId(node.value))
				source.advise(offsetOf(node), `${JSON.stringify(wrong.found)} is ${wrong.term} here (swap-audit help words)`);
		},
	});
}

const isId = (text: string): boolean => /^[a-z0-9.-]+$/.test(text);
