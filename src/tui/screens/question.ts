import { noneRow, rowMarks } from '../../interview/entry/choice.ts';
import { formWords } from '../../interview/entry/form.ts';
import { questionAt, type State } from '../../interview/state.ts';
import { answeredInTopic } from '../../interview/topic.ts';
import { howOf, wholeHow } from '../../sheet/how.ts';
import { noteOn } from '../../sheet/notes.ts';
import type { Question } from '../../sheet/question.ts';
import { asWritten, standAlone } from '../../sheet/question.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { textIn } from '../../sheet/text.ts';
import { wrap } from '../../text/wrap.ts';
import { formatAnswer } from '../../wording/format.ts';
import { type App, arrive, away, dispatch, toAudit, toReview } from '../app.ts';
import type { Frame } from '../frame.ts';
import { headLine } from '../header.ts';
import { type Binding, listKeys, pageKeys, scrollKeys } from '../keymap.ts';
import { lineEditor, textOf } from '../line-editor.ts';
import { figurePane, panel } from '../panel.ts';
import { clip, type Line, line, lines } from '../text.ts';
import { glyphs } from '../theme.ts';
import { fieldLines, hasList, waysOf } from './field.ts';

const kindIs = (kind: Question['kind']) => (app: App) => hasList(app) && questionAt(app.interview!)?.kind === kind;
const isNumber = (app: App) => app.taking === 'answer' && (questionAt(app.interview!)?.of.length ?? 0) > 0;
const count = (app: App) => waysOf(app).length || (hasList(app) ? rowMarks(questionAt(app.interview!)!).length : 0);
const knownOrder = [null, 'measured', 'paperwork', 'estimate'] as const;

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
	{ keys: ['ctrl-t'], shown: '^T', label: 'audit now', minor: true, run: toAudit },
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

/** The question with its topic, the list or the field, what was said, and the live figures. */
export function view(app: App, width: number, whole: number): Frame {
	const state = app.interview!;
	const question = questionAt(state)!;
	const section = state.model.rulebook.sections.find(({ id }) => id === question.section)?.title ?? question.section;
	const head = headLine(app, `${section}: ${question.topic}`, whole);
	const how = app.open === 'how' ? howLines(question, state, width) : [];
	const pane = (room: number) => [
		...howLines(question, state, room),
		...(app.figures ? [line(''), ...figurePane(app, question.section, room)] : []),
	];
	const form = formWords(question, state.sheet.units);
	const top = [
		head,
		...lines(textIn(question.ask, state.sheet.units), width),
		...(form && app.open !== 'how' ? lines(`Typed: ${form}`, width, 'quiet') : []),
		...(app.open === 'how' ? [] : [...sofar(state, question, width), ...trail(app, question, width)]),
	];
	const ways = waysOf(app).map(({ echo }) => clip(echo, width - 2));
	const items = ways.length > 0 ? ways : hasList(app) ? choiceRows(app, question, width) : null;
	return {
		top,
		...(app.open === 'how' ? { scroll: app.scroll } : {}),
		help: how,
		rows: items ? { items, cursor: app.cursor } : null,
		bottom: [
			...(width === whole ? rowHow(app, question, width) : []),
			...said(app, width),
			...fieldLines(app, question, width),
		],
		panel: panel(app, question.section, width),
		pane,
		footer: [],
	};
}

const howLines = (question: Question, { sheet }: State, width: number): Line[] =>
	wholeHow(question, sheet.units).flatMap(text => lines(text, width, 'quiet'));

/** How the choice under the cursor is found out, where the window has room for it. */
function rowHow(app: App, question: Question, width: number): Line[] {
	const id = hasList(app) && app.window.rows >= 20 ? Object.keys(question.choices)[app.cursor] : undefined;
	const how = id === undefined || app.open === 'how' ? '' : howOf(question, id, app.interview!.sheet.units);
	return how ? lines(how, width, 'quiet').slice(0, 4) : [];
}

/** The choices, each as many lines as its words need. */
function choiceRows(app: App, question: Question, width: number): string[] {
	const now = answerTo(app.interview!.sheet, question.id);
	const marks = rowMarks(question);
	const none = noneRow(question);
	const rows = Object.entries(question.choices).map(([id, words], at) => {
		const { chosen, free, ticked, open } = glyphs(app.appearance);
		const on = question.kind === 'several' ? app.ticked.includes(id) : now?.value === id;
		const mark = question.kind === 'several' ? (on ? ticked : open) : on ? chosen : free;
		const before = `${marks[at]} ${mark} `;
		return wrap(words, width - 2 - before.length)
			.map((part, row) => (row === 0 ? before : ' '.repeat(before.length)) + part)
			.join('\n');
	});
	return none === null ? rows : [...rows, `${marks.at(-1)} ${' '.repeat(glyphs(app.appearance).open.length)} ${none}`];
}

/** What the topic already knows. */
function sofar(state: State, question: Question, width: number): Line[] {
	const known = answeredInTopic(state, question);
	return known.length > 0 ? lines(`So far: ${known.join('; ')}`, width, 'quiet').slice(0, 2) : [];
}

/** The last answers of other topics, where the window has room for them. */
function trail({ interview, window }: App, question: Question, width: number): Line[] {
	const state = interview!;
	if (window.rows < 20) return [];
	const trail = state.trail.slice(-trailLength).flatMap(id => {
		const before = state.model.rulebook.questions.find(other => other.id === id);
		const answer = before && before.topic !== question.topic ? answerTo(state.sheet, id) : undefined;
		if (!before || !answer) return [];
		return [
			`${before.label}: ${answer.value === undefined ? 'not known' : formatAnswer(before, answer, state.sheet.units)}`,
		];
	});
	return trail.length > 0 ? [line(clip(`Before: ${trail.join('; ')}`, width), 'quiet')] : [];
}

const trailLength = 3;

function said(app: App, width: number): Line[] {
	const { said: words } = app.interview!;
	if (waysOf(app).length > 0) return lines('That comma can be read two ways. Which is meant?', width, 'odd');
	if (!words) return app.notice ? lines(app.notice, width, 'quiet') : [];
	return lines(words.text, width, words.kind === 'problem' ? 'bad' : words.kind === 'odd' ? 'odd' : 'good').slice(0, 4);
}
