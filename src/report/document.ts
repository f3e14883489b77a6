import type { Stage } from '../rulebook/rulebook.ts';
import type { Access } from '../sheet/access.ts';

/**
 * A piece of text: plain, or set apart, or pointing to the heading of a part of the document. Free text from a sheet is plain
 * text here; each printer escapes it in one place.
 */
export type Inline = string | { readonly strong: string } | { readonly code: string } | { readonly part: string };

/** What a task is known by: ticks are kept under it, and lines are filtered by place and stage. */
export interface TaskMark {
	readonly key: string;
	readonly stage: Stage;
	readonly access: Access;
}

/** A document as a small tree; printers turn it into Markdown or HTML. */
export type Block =
	/** `card`: the part stays together on one printed page; `page`: it begins one of its own. */
	| {
			readonly is: 'heading';
			readonly level: 1 | 2 | 3;
			readonly text: string;
			readonly card?: true;
			readonly page?: true;
	  }
	| { readonly is: 'paragraph'; readonly text: readonly Inline[] }
	/** A line to tick, with what belongs to it below. `close`: without a gap to the next one. */
	| {
			readonly is: 'task';
			readonly text: readonly Inline[];
			readonly details: readonly (readonly Inline[])[];
			readonly close?: true;
			readonly mark?: TaskMark;
	  }
	/** `small`: to look things up in, set small on paper. */
	| { readonly is: 'items'; readonly items: readonly (readonly Inline[])[]; readonly small?: true }
	| { readonly is: 'steps'; readonly items: readonly (readonly Inline[])[] }
	/** What is only counted where it cannot be opened: a heading that opens in HTML, a line in Markdown. */
	| { readonly is: 'fold'; readonly text: string; readonly note: string; readonly blocks: readonly Block[] }
	| Figure;

/** A picture in the text. */
export interface Figure {
	readonly is: 'figure';
	/** Ends the file name of the picture. */
	readonly name: string;
	readonly title: string;
	readonly svg: string;
}

/** A report before it is printed in a format. */
export interface Document {
	readonly title: string;
	readonly blocks: readonly Block[];
	/** To look things up in: a second file next to Markdown, behind a heading that opens in HTML. */
	readonly details?: readonly Block[];
}

/** A part with a heading, whose content is composed where it is printed. */
export interface Section {
	readonly title: string;
	readonly compose: () => Block[];
}

export const heading = (level: 1 | 2 | 3, text: string): Block => ({ is: 'heading', level, text });
export const paragraph = (...text: readonly Inline[]): Block => ({ is: 'paragraph', text });
export const strong = (text: string): Inline => ({ strong: text });
export const code = (text: string): Inline => ({ code: text });

/** The heading that a link names, as an anchor: lower case, words joined by hyphens, other signs dropped. */
export const anchorOf = (text: string): string =>
	text
		.toLowerCase()
		.replace(/[^a-z0-9 -]/g, '')
		.replaceAll(' ', '-');

/** The pictures of a document, those of its details among them. */
export const figuresOf = ({ blocks, details = [] }: Document): Figure[] =>
	[...blocks, ...details].filter((block): block is Figure => block.is === 'figure');

/** A list, with a heading or a sentence before it; nothing at all when it is empty. */
export function listed(before: readonly Block[], items: readonly (readonly Inline[])[], small?: 'small'): Block[] {
	if (items.length === 0) return [];
	return [...before, { is: 'items', items, ...(small ? { small: true } : {}) }];
}

/** A section of one small list, a line an item; null where there is none. */
export function listSection<Item>(
	title: string,
	items: readonly Item[],
	line: (item: Item) => readonly Inline[],
): Section | null {
	return items.length === 0 ? null : { title, compose: () => listed([], items.map(line), 'small') };
}
