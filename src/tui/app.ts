import { type Assessment, assess } from '../audit/assess.ts';
import { usualDraws } from '../audit/audit.ts';
import { compare } from '../audit/compare.ts';
import type { Model } from '../audit/model.ts';
import { type Figures, figuresOf } from '../interview/figures.ts';
import { listing, type Show } from '../interview/listing.ts';
import { asksAnew } from '../interview/recheck.ts';
import { halfTyped, leave, resume } from '../interview/session.ts';
import { type Pass, questionAt, type State } from '../interview/state.ts';
import { type Event, step } from '../interview/step.ts';
import type { Edit } from '../plugs/edit/edit.ts';
import type { Access } from '../sheet/access.ts';
import { choicesIn, type UnitSet } from '../sheet/question.ts';
import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { type LineEditor, lineEditor, textOf } from './line-editor.ts';
import type { LogChoices, LogSession } from './log-session.ts';
import type { Appearance } from './theme.ts';

/** A sheet that can be opened, as the opening screen tells it. */
export interface Found {
	readonly path: string;
	readonly name: string;
	readonly words: string;
}

/** What the reducer asks of the machine; done after the key that asked, in order. */
export type Effect =
	| { readonly do: 'save'; readonly sheet: Sheet }
	/** `since`: the audit in the sheet to compare with, counted from 1. */
	| { readonly do: 'write-audit'; readonly sheet: Sheet; readonly since: number | null }
	/** `log`: to read a log of it. */
	| { readonly do: 'open'; readonly path: string; readonly log?: true }
	/** Paths that begin as typed. */
	| { readonly do: 'offer-paths'; readonly begun: string }
	/** The beginning of a log, and a whole one: what comes of it comes later. */
	| { readonly do: 'look-at-log'; readonly path: string; readonly choices: LogChoices }
	| { readonly do: 'judge-log'; readonly path: string; readonly choices: LogChoices; readonly sheet: Sheet }
	| { readonly do: 'stop-log' }
	| { readonly do: 'create'; readonly name: string; readonly units: UnitSet }
	/** Stops the program until the shell goes on with it. */
	| { readonly do: 'suspend' }
	| { readonly do: 'quit' };

export type Screen =
	| 'opening'
	| 'build'
	| 'question'
	| 'sections'
	| 'review'
	| 'touched'
	| 'changed'
	| 'end'
	| 'audit'
	| 'finding'
	| 'limits'
	| 'tonight'
	| 'logFile'
	| 'logColumns'
	| 'logChannel'
	| 'logReading'
	| 'logFound'
	| 'logAnswers'
	| 'plugs'
	| 'pins'
	| 'about-half'
	| 'about-pin';

/** Everything the drawn face shows. Only `reduce` makes the next. */
export interface App {
	readonly model: Model;
	readonly today: string;
	readonly tool: string;
	readonly screen: Screen;
	/** Sheets to choose from on the opening screen. */
	readonly found: readonly Found[];
	readonly interview: State | null;
	readonly field: LineEditor;
	/** What is taken: an answer, a note, the name of a new build and then its units, whose log is read, a cell of pins. */
	readonly taking: 'answer' | 'note' | 'name' | 'units' | 'log' | 'cell';
	/** How the typed number is known; null: as the words say, else an estimate. */
	readonly known: 'measured' | 'paperwork' | 'estimate' | null;
	readonly cursor: number;
	/** How many lines of a page of text are passed. */
	readonly scroll: number;
	/** The window, and how far a page key goes in it. */
	readonly window: { readonly columns: number; readonly rows: number };
	readonly page: number;
	/** Which questions the list of them shows, and what was typed to find one in it. */
	readonly show: Show;
	readonly filter: string;
	readonly ticked: readonly string[];
	/** Sections and answers ticked as touched before a recheck, and the section whose answers are in sight. */
	readonly touched: readonly string[];
	readonly unfolded: string | null;
	readonly open: 'how' | 'keys' | null;
	/** The plugs while they are edited, and what the last TAB offered for a half-typed circuit. */
	readonly pins: { readonly edit: Edit; readonly offered: readonly string[] } | null;
	/** The audit on the screen. */
	readonly assessment: Assessment | null;
	/** The live figures, and those before the last answer, to tell what it moved. */
	readonly figures: Figures | null;
	readonly before: Figures | null;
	/** The log that is read. */
	readonly log: LogSession | null;
	/** How long an evening is, min, and the one place for it; null: the most urgent. */
	readonly evening: { readonly minutes: number; readonly place: Access | null };
	readonly notice: string | null;
	/** What stays in sight on every screen: that answers are not saved, or that the work goes on in another file. */
	readonly alert: { readonly kind: 'unsaved' | 'fork'; readonly text: string } | null;
	readonly appearance: Appearance;
	/** The units that are offered first to a new build. */
	readonly units: UnitSet;
	readonly effects: readonly Effect[];
}

export function newApp(model: Model, today: string, tool: string, found: readonly Found[]): App {
	return {
		model,
		today,
		tool,
		screen: 'opening',
		found,
		interview: null,
		field: lineEditor(),
		taking: 'answer',
		known: null,
		cursor: 0,
		scroll: 0,
		window: { columns: 80, rows: 24 },
		page: 8,
		show: 'all',
		filter: '',
		ticked: [],
		touched: [],
		unfolded: null,
		open: null,
		pins: null,
		assessment: null,
		figures: null,
		before: null,
		log: null,
		evening: { minutes: 120, place: null },
		notice: null,
		alert: null,
		units: 'us',
		appearance: { background: 'dark', depth: 4, unicode: false },
		effects: [],
	};
}

/**
 * The app with a sheet open where it was left; when all is answered at its audit, or, when it was audited before, at the
 * choice of what to do with it.
 */
export function withSheet(app: App, sheet: Sheet, pass: Pass | null, section: string | null): App {
	const { state: interview, text } = resume(app.model, sheet, pass, section);
	const opened = arrive({
		...app,
		interview,
		screen: 'question',
		assessment: null,
		figures: null,
		before: null,
		notice: null,
	});
	if (interview.at !== null) return { ...opened, field: lineEditor(text) };
	return sheet.audits.length > 0 ? { ...opened, screen: 'build' } : toAudit(opened);
}

/** A build chosen from the opening screen: one that was audited before is asked what is wanted of it. */
export function toBuild(app: App): App {
	return (app.interview?.sheet.audits.length ?? 0) > 0 ? { ...app, screen: 'build', cursor: 0 } : app;
}

/** Sets the field and the list for the question now in sight. */
export function arrive(app: App): App {
	const question = app.interview && questionAt(app.interview);
	const blank = { field: lineEditor(), taking: 'answer' as const, known: null, cursor: 0, ticked: [], open: null };
	if (!app.interview || !question) return { ...app, ...blank };
	const answer = answerTo(app.interview.sheet, question.id);
	const ids = Object.keys(question.choices);
	const { aside } = app.interview;
	const field = lineEditor(aside?.id === question.id ? aside.text : '');
	const cursor = question.kind === 'choice' ? Math.max(0, ids.indexOf(String(answer?.value))) : 0;
	const stands = question.kind === 'several' && !asksAnew(app.interview, question.id) ? answer?.value : undefined;
	const ticked = choicesIn(stands);
	return { ...app, ...blank, field, cursor, ticked };
}

/** Hands an event to the interview, saves what it changed, and moves on with it. */
export function dispatch(app: App, event: Event): App {
	if (!app.interview) return app;
	const interview = step(withHalf(app, event), event);
	const changed = interview.sheet !== app.interview.sheet;
	const moved = interview.at !== app.interview.at;
	const begun = interview.begun !== app.interview.begun;
	const effects: Effect[] =
		changed || begun ? [...app.effects, { do: 'save', sheet: leave(interview, '') }] : [...app.effects];
	const next: App = { ...app, interview, effects, notice: null, before: changed ? app.figures : app.before };
	if (interview.at === null && app.interview.at !== null) {
		if (app.interview.fromReview) return toList(arrive(next), app.show, app.interview.at, app.filter);
		return app.interview.recheck ? rechecked(next) : { ...toAudit(next), screen: 'end', scroll: 0 };
	}
	return moved ? arrive(next) : { ...next, taking: 'answer' };
}

/** Going elsewhere, a half-typed line waits at its question. */
function withHalf(app: App, event: Event): State {
	return ['back', 'go', 'section', 'review', 'later'].includes(event.do) ? halfAside(app) : app.interview!;
}

function halfAside(app: App): State {
	const state = app.interview!;
	const text = halfTyped(state, textOf(app.field));
	if (app.screen !== 'question' || state.at === null || app.taking !== 'answer') return state;
	if (text.trim() !== '') return { ...state, begun: [], aside: { id: state.at, text } };
	return state.aside?.id === state.at ? { ...state, aside: null } : state;
}

/** Away from the question to another screen: what is half typed waits at the question. */
export const away = (app: App, screen: Screen): App => ({
	...app,
	screen,
	interview: app.interview && halfAside(app),
	field: lineEditor(),
	taking: 'answer',
	cursor: 0,
});

/** The list of questions, with the cursor on one of them. */
export function toList(app: App, show: Show, id: string | null, filter = ''): App {
	const rows = listing(app.interview!, show, filter);
	const cursor = Math.max(
		0,
		rows.findIndex(({ question }) => question.id === id),
	);
	return { ...app, screen: 'review', show, field: lineEditor(filter), cursor };
}

/** All answers, out of the questions. */
export function toReview(app: App): App {
	const at = app.interview?.at ?? null;
	const reviewed = arrive(dispatch(app, { do: 'review' }));
	const any = listing(reviewed.interview!, 'answered', '').length > 0;
	return toList(reviewed, any ? 'answered' : 'all', at);
}

/** The audit screen; the audit is written beside the sheet each time it is come to. */
export function toAudit(app: App): App {
	if (!app.interview) return app;
	const { sheet, since } = app.interview;
	return {
		...app,
		screen: 'audit',
		cursor: 0,
		open: null,
		field: lineEditor(),
		assessment: compared(judged(app, sheet), since),
		effects: [...app.effects, { do: 'write-audit', sheet: leave(app.interview, ''), since }],
	};
}

/** The end of a recheck: what changed, with the audit behind it. */
export const rechecked = (app: App): App => ({ ...toAudit(app), screen: 'changed' });

/** The assessment with what changed since an earlier audit of its sheet. */
function compared(assessment: Assessment, since: number | null): Assessment {
	const before = since === null ? undefined : assessment.sheet.audits[since - 1];
	return before ? { ...assessment, audit: { ...assessment.audit, since: compare(before, assessment) } } : assessment;
}

/** Judges the sheet as the audit beside it does, but for bands and how sure each line is: quick enough between two keys. */
function judged(app: App, sheet: Sheet): Assessment {
	const { today: date, tool } = app;
	const options = { date, units: sheet.units, tool, draws: 0, gateDraws: usualDraws };
	return assess(app.model, { sheet, warnings: [] }, options);
}

/** Lets the figures catch up with the answers; called after a pause in the typing. */
export function figured(app: App): App {
	const sheet = app.interview?.sheet;
	if (!sheet || app.screen !== 'question' || app.figures?.sheet === sheet) return app;
	return { ...app, figures: figuresOf(app.model, sheet), before: app.figures ?? app.before };
}
