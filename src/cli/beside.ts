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

/** Writes the audit of a sheet beside it, NAME.audit.md, and keeps its record in the sheet. Gives the path. */
export function writeAuditBeside(model: Model, opened: Opened): string {
	const assessment = assess(model, opened, {
		date: today(),
		units: opened.sheet.units,
		tool: version,
		draws: usualDraws,
	});
	const path = opened.place.kind === 'stdin' ? 'audit.md' : opened.place.path.replace(/(\.json)?$/, '.audit.md');
	const { text, pictures } = renderAudit(assessment, 'md', basename(path, '.md'));
	writeOut(path, text, pictures);
	saveSheet(opened, { ...opened.sheet, audits: [...opened.sheet.audits, recordOf(assessment)] });
	return path;
}
