import type { Assessment } from '../audit/assess.ts';
import type { Change } from '../audit/audit.ts';
import { changeTitle, changeWords } from '../report/compose/since.ts';

const kinds = Object.keys(changeWords) as Change['change'][];

/** What changed since an earlier audit: a line a change by what it came to, then one for each figure that moved. */
export function changeLines({ audit: { since }, model, wording }: Assessment): string[] {
	if (!since) return [];
	const counted = kinds.flatMap(kind =>
		since.changes
			.filter(({ change }) => change === kind)
			.map(change => `${changeWords[kind]}: ${changeTitle(change, model)}`),
	);
	const moved = since.numbers.map(
		({ name, before, after }) =>
			`${wording.label(name)} ${wording.show(name, after)}, was ${wording.show(name, before)}`,
	);
	return [...counted, ...moved];
}

/** The same as one sentence: how many of each. */
export function changeCounts({ audit: { since } }: Assessment): string {
	const counts = kinds.flatMap(kind => {
		const own = since?.changes.filter(({ change }) => change === kind).length ?? 0;
		return own > 0 ? [`${changeWords[kind].toLowerCase()} ${own}`] : [];
	});
	return counts.length > 0 ? `${counts.join('; ')}.` : 'No line of the audit changed.';
}
