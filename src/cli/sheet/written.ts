import { basename } from 'node:path';
import type { Assessment } from '../../audit/assess.ts';
import { compare } from '../../audit/compare.ts';
import { findOuts } from '../../audit/find-out.ts';
import { lastOfOtherAnswers } from '../../audit/record.ts';
import { changeCounts } from '../../interview/changes.ts';
import { count } from '../../report/compose/names.ts';
import { nextWords, stageLines } from '../../report/compose/stage-lines.ts';
import type { AuditRecord } from '../../sheet/sheet.ts';

/** What was written, what comes next, what changed since the last audit of other answers: a line each. */
export function writtenWords(
	assessment: Assessment,
	out: string,
	attachments: readonly string[],
	now: AuditRecord,
): readonly [string, string, string] {
	const pictures = attachments.filter(name => name.endsWith('.svg')).length;
	const others = [
		...attachments.filter(name => !name.endsWith('.svg')).map(name => basename(name)),
		...(pictures > 0 ? [count(pictures, 'picture')] : []),
	];
	return [
		`Written: ${out}${others.length > 0 ? `, and beside it ${others.join(' and ')}` : ''}.`,
		`Next: ${nextWords(stageLines(assessment, findOuts(assessment)), assessment)}.`,
		changedWords(assessment, now),
	];
}

function changedWords(assessment: Assessment, now: AuditRecord): string {
	const { audit, sheet } = assessment;
	const before = lastOfOtherAnswers(sheet.audits, now);
	const since = audit.since ?? (before && compare(before, assessment));
	if (!since) return 'No earlier audit to compare with.';
	return `Since ${since.date}: ${changeCounts({ ...assessment, audit: { ...audit, since } })}`;
}
