import { recordWords } from '../../audit/record.ts';
import { open as openQuestions } from '../../interview/queue.ts';
import type { App } from '../app.ts';
import { arrive, toReview } from '../asking.ts';
import type { Frame } from '../frame.ts';
import { toAudit } from '../judging.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { readLog } from '../log-steps.ts';
import { clip, line, lines } from '../text.ts';

interface Way {
	readonly words: string;
	readonly go: (app: App) => App;
}

/** What can be done with a build that has been audited before. */
function ways(app: App): Way[] {
	const open = openQuestions(app.interview!).length;
	return [
		...(open > 0
			? [
					{
						words: `Go on with the questions, ${open} open`,
						go: (at: App) => ({ ...arrive(at), field: at.field, screen: 'question' as const }),
					},
				]
			: []),
		{
			words: 'Recheck: something on the car was changed',
			go: at => ({ ...at, screen: 'touched', cursor: 0, touched: [], unfolded: null }),
		},
		{ words: 'Read a log of it', go: readLog },
		{ words: 'See the audit', go: app => toAudit(app) },
		{
			words: 'Look through the answers',
			go: toReview,
		},
	];
}

const count = (app: App) => ways(app).length;

export const bindings: readonly Binding[] = [
	{ keys: ['enter'], shown: 'Enter', label: 'do that', run: app => ways(app)[app.cursor]!.go(app) },
	...listKeys(count),
];

/** An audited build, as it is come back to. */
export function view(app: App, width: number): Frame {
	const { sheet } = app.interview!;
	const last = sheet.audits.at(-1);
	return {
		top: [
			line(clip(sheet.name, width), 'title'),
			...(last ? lines(`Last audit on ${last.date}: ${recordWords(last)}.`, width, 'quiet') : []),
		],
		rows: { items: ways(app).map(({ words }) => clip(words, width - 2)), cursor: app.cursor },
		bottom: app.notice ? lines(app.notice, width, 'bad') : [],
		panel: [],
		footer: [],
	};
}
