import { noneRow, rowMarks } from '../../interview/entry/choice.ts';
import { formWords } from '../../interview/entry/form.ts';
import { questionAt, type State } from '../../interview/state.ts';
import { answeredInTopic } from '../../interview/topic.ts';
import { howOf, wholeHow } from '../../sheet/how.ts';
import type { Question } from '../../sheet/question.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { textIn } from '../../sheet/text.ts';
import { wrap } from '../../text/wrap.ts';
import { formatAnswer } from '../../wording/format.ts';
import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { headLine } from '../header.ts';
import { figurePane, panel } from '../panel.ts';
import { clip, type Line, line, lines } from '../text.ts';
import { glyphs } from '../theme.ts';
import { fieldLines, hasList, waysOf } from './field.ts';

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
