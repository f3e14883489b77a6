import type { Change } from '../../audit/audit.ts';
import { subjectWords } from '../../report/compose/list.ts';
import { changeWords } from '../../report/compose/since.ts';
import type { App } from '../app.ts';
import { type Binding, listKeys } from '../bindings.ts';
import type { Frame } from '../frame.ts';
import { clip, line, lines } from '../text.ts';

const kinds = Object.keys(changeWords) as Change['change'][];

/** A row a change, by what it came to; then the figures that moved. */
function rows({ assessment }: App): string[] {
	if (!assessment?.audit.since) return [];
	const { model, wording, audit } = assessment;
	const { changes, numbers } = audit.since!;
	const told = kinds.flatMap(kind =>
		changes
			.filter(({ change }) => change === kind)
			.map(change => {
				const title = model.rulebook.rules.find(({ id }) => id === change.rule)?.title ?? change.rule;
				const about = change.subject === null ? '' : ` (${subjectWords(change, { model })})`;
				return `${changeWords[kind]}: ${title}${about}${change.by === 'rules' ? ', because the rules changed' : ''}`;
			}),
	);
	const moved = numbers.map(
		({ name, before, after }) =>
			`${name.replace('.', ': ').replaceAll('_', ' ')} ${wording.show(name, after)}, was ${wording.show(name, before)}`,
	);
	return [...told, ...moved];
}

const count = (app: App) => rows(app).length;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter', 'ctrl-b', 'escape'],
		shown: 'Enter',
		label: 'the audit',
		run: app => ({ ...app, screen: 'audit', cursor: 0 }),
	},
	...listKeys(count),
];

/** What changed since the audit that this one is compared with. */
export function view(app: App, width: number): Frame {
	const since = app.assessment?.audit.since;
	const items = rows(app).map(text => clip(text, width - 2));
	const counts = kinds.flatMap(kind => {
		const own = since?.changes.filter(({ change }) => change === kind).length ?? 0;
		return own > 0 ? [`${changeWords[kind].toLowerCase()} ${own}`] : [];
	});
	const summary = counts.length > 0 ? `${counts.join('; ')}.` : 'No line of the audit changed.';
	return {
		top: [line(clip(`What changed since ${since?.date ?? 'last time'}`, width), 'title'), ...lines(summary, width)],
		rows: items.length > 0 ? { items, cursor: Math.min(app.cursor, items.length - 1) } : null,
		bottom: app.told ? lines(app.told, width, 'quiet') : [],
		panel: [],
		footer: [],
	};
}
