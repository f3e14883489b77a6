import type { LoggedAnswer } from '../../audit/log-answers.ts';
import { type LoggedAnswerWords, loggedAnswerWords } from '../../report/log/answers.ts';
import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { take, withLog } from '../log-steps.ts';
import { clip, line, lines } from '../text.ts';

const answersOf = ({ log }: App): readonly LoggedAnswer[] => log?.report?.json.answers ?? [];
const count = (app: App) => answersOf(app).length;

export const bindings: readonly Binding[] = [
	{ keys: ['text: '], shown: 'Space', label: 'take or leave', run: turn },
	{ keys: ['enter'], shown: 'Enter', label: 'that is all: into the sheet', run: take },
	{
		keys: ['ctrl-b', 'escape'],
		shown: '^B',
		label: 'back',
		run: app => ({ ...app, screen: 'logFound', cursor: 0, scroll: 0 }),
	},
	...listKeys(count),
];

function turn(app: App): App {
	const { answer } = answersOf(app)[app.cursor]!;
	const { left } = app.log!;
	return withLog(app, { left: left.includes(answer) ? left.filter(id => id !== answer) : [...left, answer] });
}

/** The answers that the log settles, each taken or left; before and after. */
export function view(app: App, width: number): Frame {
	const { left, report } = app.log!;
	const answers = answersOf(app);
	const answerWords = answers.map(answer => loggedAnswerWords(report!, answer));
	const at = answerWords[app.cursor];
	return {
		top: [
			line('Answers that the log settles', 'title'),
			...lines('Ticked ones go into the sheet. What was measured by hand is left unless you tick it.', width, 'quiet'),
		],
		rows: {
			items: answerWords.map(({ label, now, before }, index) =>
				clip(`[${left.includes(answers[index]!.answer) ? ' ' : 'x'}] ${label}: ${now} (was: ${before})`, width - 2),
			),
			cursor: app.cursor,
		},
		help: at ? lines(moreOf(at), width, 'quiet') : [],
		scroll: 0,
		bottom: [],
		panel: [],
		footer: [],
	};
}

/** What there is no room for in the line of an answer. */
function moreOf({ spread, before, by_hand, turns }: LoggedAnswerWords): string {
	const give = spread === '' ? '' : `Give or take ${spread}. `;
	const turned = turns === '' ? '' : ` Turns: ${turns}.`;
	return `${give}Before: ${before}${by_hand ? ', measured by hand' : ''}.${turned}`;
}
