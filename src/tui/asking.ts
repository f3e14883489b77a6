import { listing, type Show } from '../interview/listing.ts';
import { asksAnew } from '../interview/recheck.ts';
import { halfTyped, leave } from '../interview/session.ts';
import { questionAt, type State } from '../interview/state.ts';
import { type Event, step } from '../interview/step.ts';
import { choicesIn } from '../sheet/question.ts';
import { answerTo } from '../sheet/sheet.ts';
import type { App, Screen } from './app.ts';
import type { Effect } from './effect.ts';
import { rechecked, toAudit } from './judging.ts';
import { lineEditor, textOf } from './line-editor.ts';

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
		return app.interview.recheck ? rechecked(next) : toAudit({ ...next, scroll: 0 }, 'end');
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
