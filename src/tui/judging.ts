import { type Assessment, assess } from '../audit/assess.ts';
import { usualDraws } from '../audit/audit.ts';
import { compare } from '../audit/compare.ts';
import { figuresOf } from '../interview/figures.ts';
import { leave } from '../interview/session.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { App } from './app.ts';
import { lineEditor } from './line-editor.ts';

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
	const options = { date, units: sheet.units, tool, draws: 0, gateDraws: usualDraws, step: false };
	return assess(app.model, { sheet, warnings: [] }, options);
}

/** Lets the figures catch up with the answers; called after a pause in the typing. */
export function figured(app: App): App {
	const sheet = app.interview?.sheet;
	if (!sheet || app.screen !== 'question' || app.figures?.sheet === sheet) return app;
	return { ...app, figures: figuresOf(app.model, sheet), before: app.figures ?? app.before };
}
