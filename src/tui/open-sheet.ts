import { resume } from '../interview/session.ts';
import type { Pass } from '../interview/state.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { App } from './app.ts';
import { arrive } from './asking.ts';
import { toAudit } from './judging.ts';
import { lineEditor } from './line-editor.ts';

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
