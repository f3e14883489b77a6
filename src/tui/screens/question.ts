import { rowMarks } from '../../interview/entry/choice.ts';
import { questionAt } from '../../interview/state.ts';
import { noteOn } from '../../sheet/notes.ts';
import type { Question } from '../../sheet/question.ts';
import { asWritten, standAlone } from '../../sheet/question.ts';
import type { App } from '../app.ts';
import { arrive, away, dispatch, toReview } from '../asking.ts';
import { toAudit } from '../judging.ts';
import { type Binding, listKeys, pageKeys, scrollKeys } from '../keymap.ts';
import { lineEditor, textOf } from '../line-editor.ts';
import { hasList, waysOf } from './field.ts';

export { view } from './question-view.ts';

const kindIs = (kind: Question['kind']) => (app: App) => hasList(app) && questionAt(app.interview!)?.kind === kind;
const isNumber = (app: App) => app.taking === 'answer' && (questionAt(app.interview!)?.of.length ?? 0) > 0;
const count = (app: App) => waysOf(app).length || (hasList(app) ? rowMarks(questionAt(app.interview!)!).length : 0);
const knownOrder = [null, 'measured', 'paperwork', 'estimate'] as const;

export const paned = true;
export const typed = true;

export const bindings: readonly Binding[] = [
	{ keys: ['enter'], shown: 'Enter', label: 'answer', run: enter },
	{ keys: ['text: '], shown: 'Space', label: 'tick', when: kindIs('several'), run: tick },
	{
		keys: ['ctrl-f'],
		shown: '^F',
		label: 'how to find out',
		run: app => ({ ...app, scroll: 0, open: app.open === 'how' ? null : 'how' }),
	},
	{ keys: ['ctrl-n'], shown: '^N', label: 'not known', run: app => dispatch(app, { do: 'not-known' }) },
	{ keys: ['ctrl-l'], shown: '^L', label: 'later', minor: true, run: app => dispatch(app, { do: 'later' }) },
	{ keys: ['ctrl-b'], shown: '^B', label: 'back', minor: true, run: app => backTo(app) },
	{
		keys: ['tab'],
		shown: 'Tab',
		minor: true,
		label: 'how it is known',
		when: isNumber,
		run: app => ({ ...app, known: knownOrder[(knownOrder.indexOf(app.known) + 1) % knownOrder.length]! }),
	},
	{
		keys: ['ctrl-o'],
		shown: '^O',
		minor: true,
		label: 'note',
		run: app => ({ ...app, taking: 'note', field: lineEditor(noteOf(app)) }),
	},
	{
		keys: ['ctrl-g'],
		shown: '^G',
		label: 'go to',
		minor: true,
		run: app => away(app, 'sections'),
	},
	{
		keys: ['ctrl-r'],
		shown: '^R',
		minor: true,
		label: 'review',
		run: toReview,
	},
	{ keys: ['ctrl-t'], shown: '^T', label: 'audit now', minor: true, run: app => toAudit(app) },
	{
		keys: ['escape'],
		shown: 'Esc',
		label: 'close, or leave the note',
		minor: true,
		run: app => (app.taking === 'note' ? arrive(app) : { ...app, open: null }),
	},
	{
		keys: ['backspace'],
		shown: 'Bksp',
		label: 'take the last one back',
		minor: true,
		when: ({ taking, field, interview }) =>
			taking === 'answer' && field.characters.length === 0 && interview!.begun.length > 0,
		run: app => ({ ...dispatch(app, { do: 'take-back' }), field: lineEditor(app.interview!.begun.at(-1)) }),
	},
	...scrollKeys(app => app.open === 'how' && count(app) === 0),
	...pageKeys(({ open }) => open === 'how'),
	...listKeys(count).map(key => ({
		...key,
		when: (app: App) => key.when!(app) && !(movesCaret(key) && app.field.characters.length > 0),
		run: (app: App) => choosing(key.run(app)),
	})),
];

const movesCaret = ({ keys }: Binding) => keys.includes('home') || keys.includes('end');

function backTo(app: App): App {
	return app.taking === 'note' ? arrive(app) : dispatch(app, { do: 'back' });
}

function noteOf({ interview }: App): string {
	return interview?.at ? noteOn(interview.sheet, interview.at) : '';
}

/** Choosing from the list, whatever was typed and refused is over. */
const choosing = (app: App): App =>
	waysOf(app).length > 0 || app.field.characters.length === 0
		? app
		: dispatch({ ...app, field: lineEditor() }, { do: 'retype' });

function enter(app: App): App {
	const question = questionAt(app.interview!);
	if (!question) return app;
	if (app.open === 'how') return { ...app, open: null };
	const text = textOf(app.field);
	if (app.taking === 'note') return arrive(dispatch(app, { do: 'note', text }));
	const way = waysOf(app)[app.cursor];
	if (way) return dispatch(app, { do: 'enter', text: way.text });
	const id = Object.keys(question.choices)[app.cursor];
	if (question.kind === 'choice' && text === '' && id !== undefined)
		return dispatch(app, { do: 'set', answer: { value: id } });
	if (question.kind === 'several' && text === '') return setTicked(app, id);
	const known = app.known && question.of.length > 0 ? ` ${app.known}` : '';
	const entered = dispatch(app, { do: 'enter', text: text + known });
	// A piece of a list is taken: the next one has the field to itself.
	if ((entered.interview?.begun.length ?? 0) > app.interview!.begun.length) return { ...entered, field: lineEditor() };
	return waysOf(entered).length > 0 ? { ...entered, cursor: 0 } : entered;
}

/** The ticked rows as the answer. Nothing ticked is none of them only where the row that says so is chosen. */
function setTicked(app: App, id: string | undefined): App {
	const none = id === undefined || standAlone.includes(id);
	if (app.ticked.length > 0 || none) {
		const chosen = app.ticked.length > 0 ? [...app.ticked] : id === undefined ? [] : [id];
		return dispatch(app, { do: 'set', answer: { value: asWritten(questionAt(app.interview!)!, chosen) } });
	}
	const text = 'Nothing is ticked. Space ticks a row; the last row says that none applies.';
	return { ...app, interview: { ...app.interview!, said: { kind: 'problem', text } } };
}

/** Ticks or unticks the row under the cursor; what stands alone takes the others away. */
function tick(app: App): App {
	const id = Object.keys(questionAt(app.interview!)!.choices)[app.cursor];
	if (id === undefined) return { ...app, ticked: [] };
	if (app.ticked.includes(id)) return { ...app, ticked: app.ticked.filter(other => other !== id) };
	const others = standAlone.includes(id) ? [] : app.ticked.filter(other => !standAlone.includes(other));
	return { ...app, ticked: [...others, id] };
}
