import type { Part } from '../rulebook/rulebook.ts';

/** What of a list of parts at hand the rulebook knows, by id, and what it does not. */
export interface Have {
	readonly parts: ReadonlySet<string>;
	readonly unknown: readonly string[];
}

/** A name without its article, its count, its case. */
const bare = (text: string): string =>
	text
		.toLowerCase()
		.replace(/^\s*(\d+|a|an|the)\s+/, '')
		.replace(/[^a-z0-9]+/g, ' ')
		.trim();

/** Reads parts at hand, one a line: a part's id, its title or its plural, with or without a count. A line with # is a remark. */
export function readHave(text: string, parts: readonly Part[]): Have {
	const known = new Map<string, string>();
	for (const { id, title, plural } of parts) for (const name of [id, title, plural ?? id]) known.set(bare(name), id);
	const lines = text
		.split(/\r?\n/)
		.map(line => line.replace(/#.*/, '').trim())
		.filter(line => line !== '');
	const found = lines.map(line => known.get(bare(line)));
	return {
		parts: new Set(found.filter(id => id !== undefined)),
		unknown: lines.filter((_, index) => found[index] === undefined),
	};
}
