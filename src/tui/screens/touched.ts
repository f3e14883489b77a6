import { answerTo } from '../../sheet/sheet.ts';
import { formatAnswer } from '../../wording/format.ts';
import type { App } from '../app.ts';
import { arrive, dispatch } from '../asking.ts';
import type { Frame } from '../frame.ts';
import { rechecked } from '../judging.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { clip, line, lines } from '../text.ts';

interface Row {
	/** A section or an answer. */
	readonly id: string;
	readonly section: string;
	readonly words: string;
}

/** The sections; under the one that is unfolded its answers. */
function rows({ model, interview, unfolded }: App): Row[] {
	const { sheet } = interview!;
	return model.rulebook.sections.flatMap(({ id, title }): Row[] => {
		const own = model.rulebook.questions.filter(
			question => question.section === id && answerTo(sheet, question.id) !== undefined,
		);
		const answers = own.map(question => {
			const answer = answerTo(sheet, question.id)!;
			const now = answer.value === undefined ? 'not known' : formatAnswer(question, answer, sheet.units);
			return {
				id: question.id,
				section: id,
				words: `  ${question.label}: ${now}`,
			};
		});
		return [{ id, section: id, words: `${title}, ${own.length} answered` }, ...(unfolded === id ? answers : [])];
	});
}

const count = (app: App) => rows(app).length;

export const bindings: readonly Binding[] = [
	{ keys: ['text: '], shown: 'Space', label: 'tick', run: tick },
	{
		keys: ['right'],
		shown: 'Right',
		label: 'its answers',
		run: app => fold(app, rows(app)[app.cursor]!.section),
	},
	{ keys: ['left'], shown: 'Left', label: 'fold', when: app => app.unfolded !== null, run: app => fold(app, null) },
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'that is all',
		run: app => {
			const begun = dispatch(app, { do: 'recheck', touched: app.touched });
			return begun.interview?.at === null ? rechecked(begun) : arrive({ ...begun, screen: 'question' });
		},
	},
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back', run: app => ({ ...app, screen: 'build', cursor: 0 }) },
	...listKeys(count),
];

function tick(app: App): App {
	const { id } = rows(app)[app.cursor]!;
	const touched = app.touched.includes(id) ? app.touched.filter(other => other !== id) : [...app.touched, id];
	return { ...app, touched };
}

/** Folds one section out and the others in; the cursor stays on its section. */
function fold(app: App, unfolded: string | null): App {
	const { section } = rows(app)[app.cursor]!;
	const next = { ...app, unfolded };
	return { ...next, cursor: rows(next).findIndex(({ id }) => id === section) };
}

/** What was touched since the last audit: sections whole, or single answers. */
export function view(app: App, width: number): Frame {
	const items = rows(app).map(({ id, section, words }) => {
		const on = app.touched.includes(id) || app.touched.includes(section);
		return clip(`${on ? '[x]' : '[ ]'} ${words}`, width - 2);
	});
	const last = app.interview!.sheet.audits.at(-1)?.date;
	return {
		top: [
			line(clip(`What did you touch${last ? ` since ${last}` : ''}?`, width), 'title'),
			...lines('Only that, what hangs on it, and what is still open will be asked.', width, 'quiet'),
		],
		rows: { items, cursor: app.cursor },
		bottom: [],
		panel: [],
		footer: [],
	};
}
