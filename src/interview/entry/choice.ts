import { asWritten, type Question, standAlone } from '../../sheet/question.ts';
import type { Reader } from './reader.ts';

const numberWords = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** A figure or a number word as a figure: `3`, `three`. */
const figureOf = (word: string): string | null =>
	/^\d+$/.test(word) ? word : numberWords.includes(word) ? String(numberWords.indexOf(word)) : null;

/** The figures that stand in the words of each choice: `two wires` has 2, `E85` has 85. */
function figuresIn({ choices }: Question): ReadonlySet<string>[] {
	return Object.entries(choices).map(
		([id, words]) =>
			new Set(
				`${id} ${words}`
					.toLowerCase()
					.match(/\d+|[a-z]+/g)
					?.flatMap(word => figureOf(word) ?? []) ?? [],
			),
	);
}

/** Whether the choices tell themselves apart by figures: then a typed one means what it says, and never a row. */
function numberedByWords(figures: readonly ReadonlySet<string>[]): boolean {
	const own = figures.filter(({ size }) => size > 0).map(set => [...set].sort().join());
	return new Set(own).size > 1;
}

/** What stands before each row and picks it: its number; a letter where a number would be mistaken for what the row says. */
export function rowMarks(question: Question): string[] {
	const lettered = numberedByWords(figuresIn(question));
	const count = Object.keys(question.choices).length + (noneRow(question) ? 1 : 0);
	return Array.from({ length: count }, (_, row) => (lettered ? String.fromCharCode(97 + row) : String(row + 1)));
}

/** The words of the row that says none of them, where no choice says so itself. */
export const noneRow = ({ kind, choices }: Question): string | null =>
	kind === 'several' && !Object.keys(choices).some(id => standAlone.includes(id)) ? 'none of these' : null;

type Picked = { readonly row: number } | { readonly problem: string };

/** A choice by the mark of its row, its name, its words, a figure that it alone has in them, or the start of one of them. */
function pick(question: Question, text: string): Picked {
	const ids = Object.keys(question.choices);
	const wanted = text.toLowerCase();
	const marks = rowMarks(question);
	const figure = figureOf(wanted);
	if (figure !== null && marks[0] === 'a') {
		const having = figuresIn(question).flatMap((figures, row) => (figures.has(figure) ? [row] : []));
		if (having.length === 1) return { row: having[0]! };
		if (having.length > 1)
			return { problem: `${text} may be ${listed(having.map(row => question.choices[ids[row]!]!))}: type the letter.` };
	}
	const marked = marks.indexOf(figure ?? wanted);
	if (marked >= 0) return { row: marked };
	const forms = (id: string) => [id, question.choices[id]!.toLowerCase(), id.replaceAll('-', ' ')];
	const exact = ids.findIndex(id => forms(id).includes(wanted));
	if (exact >= 0) return { row: exact };
	const starts = ids.filter(id => forms(id).some(form => form.startsWith(wanted)));
	if (starts.length === 1) return { row: ids.indexOf(starts[0]!) };
	const within = ids.filter(id => forms(id).some(form => form.split(/[\s,-]+/).includes(wanted)));
	if (within.length === 1) return { row: ids.indexOf(within[0]!) };
	const kinds = marks[0] === 'a' ? 'a letter' : 'a number';
	if (starts.length > 1)
		return { problem: `${JSON.stringify(text)} begins ${listed(starts.map(id => question.choices[id]!))}: type more.` };
	return { problem: `${JSON.stringify(text)} is none of the choices: type ${kinds} or a name.` };
}

const listed = (words: readonly string[]): string =>
	words.length === 1 ? `"${words[0]}"` : `${words.slice(0, -1).map(quoted).join(', ')} or ${quoted(words.at(-1)!)}`;
const quoted = (words: string): string => `"${words}"`;

/** The one that is meant by its letter, its number or the beginning of its words. */
export const readChoice: Reader = (question, text) => {
	const picked = pick(question, text);
	return 'row' in picked ? { answer: { value: Object.keys(question.choices)[picked.row]! } } : picked;
};

/** Those that apply, with commas between; `none` is none of them. */
export const readSeveral: Reader = (question, text) => {
	const ids = Object.keys(question.choices);
	const alone = ids.find(id => standAlone.includes(id));
	if (/^none( of (these|them))?$/i.test(text)) return { answer: { value: asWritten(question, alone ? [alone] : []) } };
	const words = text.includes(',') ? text.split(',') : /^[\d\s]+$/.test(text) ? text.split(/\s+/) : [text];
	const chosen: string[] = [];
	for (const word of words.map(part => part.trim()).filter(part => part !== '')) {
		if (/^none$/i.test(word)) return { problem: '"none" stands alone: type none, or those that apply.' };
		const picked = pick(question, word);
		if ('problem' in picked) return picked;
		const id = ids[picked.row];
		// The last row of a list without a choice that says so: none of them.
		if (id === undefined && words.length > 1) return { problem: '"none of these" stands alone.' };
		if (id === undefined) return { answer: { value: [] } };
		if (!chosen.includes(id)) chosen.push(id);
	}
	return { answer: { value: asWritten(question, chosen) } };
};
