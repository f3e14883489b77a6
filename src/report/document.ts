/** A piece of text: plain, or set apart. Free text from a sheet is plain text here; each printer escapes it in one place. */
export type Inline = string | { readonly strong: string } | { readonly code: string };

/** A document as a small tree; printers turn it into Markdown or HTML. */
export type Block =
	| { readonly is: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
	| { readonly is: 'paragraph'; readonly text: readonly Inline[] }
	/** A line to tick, with what belongs to it below. */
	| { readonly is: 'task'; readonly text: readonly Inline[]; readonly details: readonly (readonly Inline[])[] }
	| { readonly is: 'items'; readonly items: readonly (readonly Inline[])[] }
	| { readonly is: 'steps'; readonly items: readonly (readonly Inline[])[] }
	| { readonly is: 'table'; readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] }
	| { readonly is: 'figure'; readonly name: string; readonly title: string; readonly svg: string };

export interface Document {
	readonly title: string;
	readonly blocks: readonly Block[];
}

export const heading = (level: 1 | 2 | 3, text: string): Block => ({ is: 'heading', level, text });
export const paragraph = (...text: readonly Inline[]): Block => ({ is: 'paragraph', text });
export const strong = (text: string): Inline => ({ strong: text });
export const code = (text: string): Inline => ({ code: text });
