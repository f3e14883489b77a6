import type { Entry, Way } from './outcome.ts';

/** A comma before three figures: of thousands, or of decimals. */
const doubtful = /(\d),(\d{3})(?!\d)/g;

/** A line with doubtful commas, written both ways: one person means the same by every comma. Null when that does not help. */
export function bothWays(text: string, read: (text: string) => Entry): [Way, Way] | null {
	const ways = [text.replace(doubtful, '$1$2'), text.replace(doubtful, '$1.$2')].map(way => {
		const entry = read(way);
		if (entry.is === 'two-ways' || entry.is === 'offer') return null;
		return { text: way, echo: entry.is === 'problem' ? `${way}, which does not fit` : entry.echo };
	});
	const [one, two] = ways;
	return one && two && one.text !== two.text ? [one, two] : null;
}
