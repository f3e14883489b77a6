/** A piece of text: plain, or set apart. Free text from a sheet is plain text here; each printer escapes it in one place. */
export type Inline = string | { readonly strong: string } | { readonly code: string };

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
	/** A line to tick, with what belongs to it below. */
	| { readonly is: 'task'; readonly text: readonly Inline[]; readonly details: readonly (readonly Inline[])[] }
	/** `small`: to look things up in, set small on paper. */
	| { readonly is: 'items'; readonly items: readonly (readonly Inline[])[]; readonly small?: true }
	| { readonly is: 'steps'; readonly items: readonly (readonly Inline[])[] }
	| Figure;

export interface Figure {
	readonly is: 'figure';
	/** Ends the file name of the picture. */
	readonly name: string;
	readonly title: string;
	readonly svg: string;
}

export interface Document {
	readonly title: string;
	readonly blocks: readonly Block[];
}

export const heading = (level: 1 | 2 | 3, text: string): Block => ({ is: 'heading', level, text });
export const paragraph = (...text: readonly Inline[]): Block => ({ is: 'paragraph', text });
export const strong = (text: string): Inline => ({ strong: text });
export const code = (text: string): Inline => ({ code: text });

/** A list, with a heading or a sentence before it; nothing at all when it is empty. */
export function listed(before: readonly Block[], items: readonly (readonly Inline[])[], small?: 'small'): Block[] {
	if (items.length === 0) return [];
	return [...before, { is: 'items', items, ...(small ? { small: true } : {}) }];
}
