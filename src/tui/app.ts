import { type Assessment, assess } from '../audit/assess.ts';
import type { Model } from '../audit/model.ts';
import { resume } from '../interview/sitting.ts';
import { type Pass, questionAt, type State } from '../interview/state.ts';
import { type Event, step } from '../interview/step.ts';
import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { type Buffer, buffer } from './buffer.ts';

/** A sheet that can be opened, as the opening screen tells it. */
export interface Found {
	readonly path: string;
	readonly name: string;
	readonly told: string;
}

/** What the reducer asks of the machine; done after the key that asked, in order. */
export type Wish =
	| { readonly wish: 'save'; readonly sheet: Sheet }
	| { readonly wish: 'write-audit'; readonly sheet: Sheet }
	| { readonly wish: 'open'; readonly path: string }
	| { readonly wish: 'create'; readonly name: string }
	| { readonly wish: 'quit' };

export type Screen = 'opening' | 'question' | 'review' | 'audit' | 'finding' | 'limits' | 'sections';

/** Everything the drawn face shows. Only `reduce` makes the next. */
export interface App {
	readonly model: Model;
	readonly today: string;
	readonly tool: string;
	readonly screen: Screen;
	/** Sheets to choose from on the opening screen. */
	readonly found: readonly Found[];
	readonly interview: State | null;
	readonly field: Buffer;
	/** What the field takes: an answer, a note, the name of a new sheet. */
	readonly taking: 'answer' | 'note' | 'name';
	/** How the typed number is known; null: as the words say, else an estimate. */
	readonly known: 'measured' | 'paperwork' | 'estimate' | null;
	readonly cursor: number;
	readonly ticked: readonly string[];
	readonly open: 'how' | 'keys' | null;
	readonly assessment: Assessment | null;
	/** Figures of the sheet as it was before the last answer, to tell what it changed. */
	readonly before: Assessment | null;
	readonly told: string | null;
	readonly wishes: readonly Wish[];
}

export function newApp(model: Model, today: string, tool: string, found: readonly Found[]): App {
	return {
		model,
		today,
		tool,
		screen: 'opening',
		found,
		interview: null,
		field: buffer(),
		taking: 'answer',
		known: null,
		cursor: 0,
		ticked: [],
		open: null,
		assessment: null,
		before: null,
		told: null,
		wishes: [],
	};
}

/** The app with a sheet open at its first open question, or at its audit when all is answered. */
export function withSheet(app: App, sheet: Sheet, pass: Pass, section: string | null): App {
	const { state: interview, text } = resume(app.model, sheet, pass, section);
	const opened = arrive({ ...app, interview, screen: 'question', assessment: null, before: null, told: null });
	return interview.at === null ? toAudit(opened) : { ...opened, field: buffer(text) };
}

/** Sets the field and the list for the question now in sight. */
export function arrive(app: App): App {
	const question = app.interview && questionAt(app.interview);
	const blank = { field: buffer(), taking: 'answer' as const, known: null, cursor: 0, ticked: [], open: null };
	if (!app.interview || !question) return { ...app, ...blank };
	const answer = answerTo(app.interview.sheet, question.id);
	const ids = Object.keys(question.choices);
	const cursor = question.kind === 'choice' ? Math.max(0, ids.indexOf(String(answer?.value))) : 0;
	const ticked = question.kind === 'several' && Array.isArray(answer?.value) ? (answer.value as string[]) : [];
	return { ...app, ...blank, cursor, ticked };
}

/** Hands an event to the interview, saves what it changed, and moves on with it. */
export function tell(app: App, event: Event): App {
	if (!app.interview) return app;
	const interview = step(app.interview, event);
	const changed = interview.sheet !== app.interview.sheet;
	const moved = interview.at !== app.interview.at;
	const wishes: Wish[] = changed ? [...app.wishes, { wish: 'save', sheet: interview.sheet }] : [...app.wishes];
	const next: App = { ...app, interview, wishes, told: null, before: changed ? app.assessment : app.before };
	if (interview.at === null && app.interview.at !== null) {
		return app.interview.fromReview ? { ...arrive(next), screen: 'review' } : toAudit(next);
	}
	return moved ? arrive(next) : { ...next, taking: 'answer' };
}

/** The audit screen; the audit is written beside the sheet each time it is come to. */
export function toAudit(app: App): App {
	if (!app.interview) return app;
	const { sheet } = app.interview;
	return {
		...app,
		screen: 'audit',
		cursor: 0,
		open: null,
		field: buffer(),
		assessment: judged(app, sheet),
		wishes: [...app.wishes, { wish: 'write-audit', sheet }],
	};
}

/** Judges the sheet without draws: quick enough between two keys. */
export function judged(app: App, sheet: Sheet): Assessment {
	return assess(app.model, { sheet, warnings: [] }, { date: app.today, units: sheet.units, tool: app.tool, draws: 0 });
}

/** Lets the figures catch up with the answers; called after a pause in the typing. */
export function figured(app: App): App {
	const sheet = app.interview?.sheet;
	if (!sheet || app.assessment?.sheet === sheet) return app;
	return { ...app, assessment: judged(app, sheet), before: app.assessment ?? app.before };
}
