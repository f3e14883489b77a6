import { type Listed, listing, shows } from '../../interview/listing.ts';
import { wholeHow } from '../../sheet/how.ts';
import { textIn } from '../../sheet/text.ts';
import type { App } from '../app.ts';
import { arrive, dispatch } from '../asking.ts';
import type { Frame } from '../frame.ts';
import { toAudit } from '../judging.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { lineEditor, textOf } from '../line-editor.ts';
import { clip, type Line, line, lines } from '../text.ts';

const rows = (app: App): readonly Listed[] => listing(app.interview!, app.show, textOf(app.field));
const count = (app: App) => rows(app).length;

export const paned = true;
export const typed = true;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'go there',
		when: app => count(app) > 0,
		run: app => {
			const { id } = rows(app)[app.cursor]!.question;
			return arrive({ ...dispatch(app, { do: 'go', id }), screen: 'question', filter: textOf(app.field) });
		},
	},
	{
		keys: ['tab'],
		shown: 'Tab',
		label: 'show others',
		run: app => ({ ...app, show: shows[(shows.indexOf(app.show) + 1) % shows.length]!, cursor: 0 }),
	},
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back', run: app => leave(app) },
	{ keys: ['ctrl-t'], shown: '^T', label: 'audit', minor: true, run: app => toAudit(app) },
	...listKeys(count),
];

/** What was typed to find something goes first, then the screen. */
function leave(app: App): App {
	if (app.field.characters.length > 0) return { ...app, field: lineEditor(), cursor: 0 };
	if (app.interview?.at !== null) return arrive({ ...app, screen: 'question' });
	const back = dispatch(app, { do: 'back' });
	return arrive({ ...back, screen: back.interview?.at === null ? 'review' : 'question' });
}

/** The question under the cursor, with its section. */
function about({ interview, model }: App, { question }: Listed, width: number): Line[] {
	const section = model.rulebook.sections.find(({ id }) => id === question.section)?.title ?? question.section;
	return lines(`${section}: ${textIn(question.ask, interview!.sheet.units)}`, width, 'quiet');
}

/** The questions, answered and open; what is typed narrows them down. */
export function view(app: App, width: number, whole: number): Frame {
	const state = app.interview!;
	const found = rows(app);
	const cursor = Math.min(app.cursor, Math.max(0, found.length - 1));
	const here = found[cursor];
	const items = found.map(({ question, number, words }) =>
		clip(`${String(number).padStart(3)} ${question.label}: ${words}`, width - 2),
	);
	const shown = app.show === 'all' ? 'all questions' : app.show;
	return {
		top: [line(clip(`Questions: ${shown}${here ? `, ${cursor + 1} of ${found.length}` : ''}`, width), 'title')],
		rows: here ? { items, cursor } : null,
		bottom: [
			...(here ? [] : [line(app.field.characters.length > 0 ? 'None is called that.' : 'None.')]),
			...(here && width === whole ? about(app, here, width).slice(0, 2) : []),
			...(state.said ? lines(state.said.text, width, 'good') : []),
			line(clip(`Find (name or number): ${textOf(app.field)}_`, width), 'field'),
		],
		...(here
			? {
					pane: (room: number) => [
						...about(app, here, room),
						line(''),
						...wholeHow(here.question, state.sheet.units).flatMap(text => lines(text, room, 'quiet')),
					],
				}
			: {}),
		panel: [],
		footer: [],
	};
}
