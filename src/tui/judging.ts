import { type Assessment, assess } from '../audit/assess.ts';
import { usualDraws } from '../audit/audit.ts';
import { compare } from '../audit/compare.ts';
import { fitsFirst } from '../audit/fitted.ts';
import { figuresOf } from '../interview/figures.ts';
import { leave } from '../interview/session.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { App, Audited } from './app.ts';
import { lineEditor } from './line-editor.ts';

/**
 * The audit, on the screen that leads to it; it is written beside the sheet each time it is come to. Where the model has to be
 * fitted to a log first, that goes on beside the drawing.
 */
export function toAudit(app: App, to: Audited = 'audit'): App {
	if (!app.interview) return app;
	const { sheet } = app.interview;
	return fitsFirst(app.model, sheet)
		? {
				...blank(app, 'fitting'),
				notice: null,
				fitting: { to, share: 0 },
				effects: [...app.effects, { do: 'fit', sheet }],
			}
		: audited(app, to);
}

/** The audit after the fit. */
export const fitted = (app: App): App => (app.fitting ? audited({ ...app, fitting: null }, app.fitting.to) : app);

/** The audit without the fit that was under way. It is not the sheet's: it is not written. */
export function withoutFit(app: App): App {
	if (!app.fitting || !app.interview) return app;
	const assessment = judged(app, app.interview.sheet, true);
	const notice = 'Shown without the fit to the log, and not written: S makes both.';
	// What changed since an audit with it would be the fit.
	return { ...blank(app, app.fitting.to === 'end' ? 'end' : 'audit'), fitting: null, assessment, notice };
}

function audited(app: App, to: Audited): App {
	const { sheet, since } = app.interview!;
	return {
		...blank(app, to),
		assessment: compared(judged(app, sheet), since),
		effects: [...app.effects, { do: 'write-audit', sheet: leave(app.interview!, ''), since }],
	};
}

const blank = (app: App, screen: App['screen']): App => ({
	...app,
	screen,
	cursor: 0,
	open: null,
	field: lineEditor(),
});

/** The end of a recheck: what changed, with the audit behind it. */
export const rechecked = (app: App): App => toAudit(app, 'changed');

/** The assessment with what changed since an earlier audit of its sheet. */
function compared(assessment: Assessment, since: number | null): Assessment {
	const before = since === null ? undefined : assessment.sheet.audits[since - 1];
	return before ? { ...assessment, audit: { ...assessment.audit, since: compare(before, assessment) } } : assessment;
}

/** Judges the sheet as the audit beside it does, but for bands and how sure each line is: quick enough between two keys. */
function judged(app: App, sheet: Sheet, unfitted = false): Assessment {
	const { today: date, tool } = app;
	const options = { date, units: sheet.units, tool, draws: 0, gateDraws: usualDraws, step: false, unfitted };
	return assess(app.model, { sheet, warnings: [] }, options);
}

/** Lets the figures catch up with the answers; called after a pause in the typing. */
export function figured(app: App): App {
	const sheet = app.interview?.sheet;
	if (!sheet || app.screen !== 'question' || app.figures?.sheet === sheet) return app;
	return { ...app, figures: figuresOf(app.model, sheet), before: app.figures ?? app.before };
}
