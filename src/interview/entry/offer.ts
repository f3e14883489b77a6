import { isList, type Question, type UnitSet } from '../../sheet/question.ts';
import type { Entry, Way } from './outcome.ts';

/** A line that cannot be taken as it stands, as it may be meant: read so, it fits without being odd. */
export function offered(question: Question, text: string, units: UnitSet, read: (text: string) => Entry): Way | null {
	for (const way of ways(question, text, units)) {
		const entry = read(way);
		if (entry.is === 'answer') return { text: way, echo: entry.echo };
	}
	return null;
}

function ways({ kind, of, unit }: Question, text: string, units: UnitSet): string[] {
	// A year by its last two figures.
	if (kind === 'whole') return /^'?\d\d$/.test(text) ? ['20', '19'].map(age => age + text.slice(-2)) : [];
	if (of.length === 0 || isList(kind)) return [];
	// Without a unit: in the one of the other set. With one that is no flow: as much an hour or a minute.
	if (/^[\d.,]+$/.test(text)) return [`${text} ${unit[units === 'us' ? 'metric' : 'us'][0]}`];
	return /^[\d.,]+ *[a-z]+$/i.test(text) ? [`${text}/h`, `${text}/min`] : [];
}
