import { basename } from 'node:path';
import { assess } from '../audit/assess.ts';
import type { Model } from '../audit/model.ts';
import { recordOf } from '../audit/record.ts';
import { writeOut } from '../files/out.ts';
import { renderAudit } from '../report/render.ts';
import { usualDraws } from './judged.ts';
import { today } from './options.ts';
import { type Opened, saveSheet } from './sheet.ts';
import { version } from './version.ts';

/** Writes the audit of a sheet beside it, NAME.audit.md, and keeps its record in the sheet. A demo is not written. */
export function writeAuditBeside(model: Model, opened: Opened): { readonly path: string; readonly opened: Opened } {
	if (opened.place.kind === 'stdin') return { path: 'nowhere: the demo build is only to look at', opened };
	const options = { date: today(), units: opened.sheet.units, tool: version, draws: usualDraws };
	const assessment = assess(model, opened, options);
	const path = opened.place.path.replace(/(\.json)?$/, '.audit.md');
	const { text, pictures } = renderAudit(assessment, 'md', basename(path, '.md'));
	writeOut(path, text, pictures);
	return {
		path,
		opened: saveSheet(opened, { ...opened.sheet, audits: [...opened.sheet.audits, recordOf(assessment)] }),
	};
}
