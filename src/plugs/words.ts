import type { Vocabulary } from './circuit.ts';

/** What a name comes to: its words in one spelling each, in no order; and the same without the words that add little. */
export interface Bag {
	readonly whole: string;
	readonly bare: string;
}

type Words = Pick<Vocabulary, 'abbreviations' | 'filler'>;

/** Turns names of circuits into bags of words that can be compared. */
export function bagger({ abbreviations, filler }: Words): (text: string) => Bag {
	const short = new Map(Object.entries(abbreviations).map(([word, stands]) => [word, stands.split(' ')]));
	const dropped = new Set(filler);
	const expand = (word: string): readonly string[] =>
		short.get(word) ?? split(word).flatMap(part => short.get(part) ?? [part]);
	return text => {
		const words = merged(wordsOf(text).flatMap(expand));
		return { whole: joined(words), bare: joined(words.filter(word => !dropped.has(word))) };
	};
}

/** A name in small letters and words: signs become words, bank and sensor of an oxygen sensor one word. */
export function wordsOf(text: string): string[] {
	const small = text.toLowerCase();
	// Most names are plain words, and nothing below changes those.
	if (/^[a-z]+(?: [a-z]+)*$/.test(small)) return small.split(' ');
	return small
		.replace(/\ba\s*\/\s*c\b/g, ' ac ')
		.replace(/\bb\s*\+/g, ' battery ')
		.replace(/\bbank\W*(\d)\W+(?:sensor|sens|snsr)\W*(\d)/g, ' b$1s$2 ')
		.replace(/\bb(?:ank)?\W?([12])\W?s(?:ensor)?\W?([12])\b/g, ' b$1s$2 ')
		.replace(/\b(\d)\s*\/\s*(\d)\b/g, ' b$1s$2 ')
		.replace(/\bpark\s*\/\s*neutral|\bp\s*\/\s*n\b/g, ' park neutral ')
		.replace(/\+/g, ' plus ')
		.replace(/(^|[\s(])[-\u2212\u2013](?=$|[\s)])/g, ' minus ')
		.replace(/[#№]|\bno\.\s*(?=\d)/g, ' ')
		.replace(/\b(\d+)\s*(?:volts?|v)\b/g, ' $1 v ')
		.split(/[^\p{L}\p{N}]+/u)
		.filter(word => word !== '');
}

/** `inj1` is two words, `b1s1` and `k2x` are one. */
function split(word: string): string[] {
	const parts = /^([a-z]{2,})(\d{1,2})$/.exec(word);
	return parts && !/^(?:ho|iso)$/.test(parts[1]!) ? [parts[1]!, parts[2]!] : [word];
}

/** What two words say that are one thing: the front sensor of a bank is its sensor 1. */
function merged(words: readonly string[]): string[] {
	const place = words.includes('front') ? '1' : words.includes('rear') ? '2' : null;
	const bank = words.indexOf('bank');
	if (place === null || bank < 0 || !/^[12]$/.test(words[bank + 1] ?? '') || !words.includes('oxygen'))
		return plain(words);
	const rest = words.filter((word, at) => at !== bank && at !== bank + 1 && word !== 'front' && word !== 'rear');
	return plain([...rest, `b${words[bank + 1]}s${place}`]);
}

/** An oxygen sensor's own heater is recognized by the word heater; that the sensor is heated says nothing. */
const plain = (words: readonly string[]): string[] =>
	words.includes('oxygen') || words.some(word => /^b\ds\d$/.test(word))
		? words.filter(word => word !== 'heated')
		: [...words];

/** Sorted, each once: `coolant coolant` is no other circuit. */
const joined = (words: readonly string[]): string => [...new Set(words)].sort().join(' ');
