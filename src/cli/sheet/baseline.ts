import { earlierIn, lastOfOtherAnswers } from '../../audit/record.ts';
import { readWhole } from '../../files/read.ts';
import { parseSheet } from '../../sheet/parse.ts';
import type { AuditRecord, Sheet } from '../../sheet/sheet.ts';
import { readDate } from '../options/values.ts';
import { BadUsage } from '../process/exit.ts';
import { parseFrom } from './sheet.ts';

/** The earlier audit that a recheck compares with: the sheet's last with other answers, the last one up to a day, or one in another file. */
export function findBaseline(sheet: Sheet, now: AuditRecord, since: string | null): AuditRecord | null {
	if (since === null) return lastOfOtherAnswers(sheet.audits, now);
	if (/^\d{4}-\d{2}-\d{2}$/.test(since)) {
		const day = readDate(since, '--since');
		return sheet.audits.findLast(({ date }) => date <= day) ?? null;
	}
	const found = parseFrom(since, () => earlierIn(parseSheet(readWhole(since).text)));
	if (!found)
		throw new BadUsage(
			`--since: found ${JSON.stringify(since)}; accepted: a day as YYYY-MM-DD, an audit as JSON, or a sheet with an audit in it`,
		);
	return found;
}
