import { basename } from 'node:path';
import { type Assessment, assess } from '../../audit/assess.ts';
import { usualDraws } from '../../audit/audit.ts';
import { compare } from '../../audit/compare.ts';
import type { Model } from '../../audit/model.ts';
import { recordOf, withRecord } from '../../audit/record.ts';
import { writeOutput } from '../../files/output.ts';
import { renderAudit } from '../../report/render.ts';
import { version } from '../assets/version.ts';
import { today } from '../options/values.ts';
import { type Opened, saveSheet } from './sheet.ts';

/**
 * Writes the audit of a sheet beside it, NAME.audit.md, compared with one of the audits in it (`since`, counted from 1),
 * and keeps its record in it, unless the last record says the same. A demo is not written. `message` says where it is.
 */
export function writeAudit(
	model: Model,
	opened: Opened,
	since: number | null = null,
): { readonly message: string; readonly opened: Opened; readonly assessment: Assessment | null } {
	if (opened.place.kind === 'stdin')
		return { message: 'The demo build is only to look at: no audit is written', opened, assessment: null };
	const options = { date: today(), units: opened.sheet.units, tool: version, draws: usualDraws };
	const judged = assess(model, opened, options);
	const before = since === null ? undefined : opened.sheet.audits[since - 1];
	const assessment = before ? { ...judged, audit: { ...judged.audit, since: compare(before, judged) } } : judged;
	const path = opened.place.path.replace(/(\.json)?$/, '.audit.md');
	const { text, attachments } = renderAudit(assessment, 'md', basename(path, '.md'));
	writeOutput(path, text, attachments);
	const record = recordOf(judged);
	const { audits } = opened.sheet;
	const sheet = { ...opened.sheet, audits: withRecord(audits, record) };
	return { message: `The audit is in ${path}`, opened: saveSheet(opened, sheet), assessment };
}
