import { asProblem } from '../../files/problem.ts';
import { type Read, readWhole } from '../../files/read.ts';
import { auditProblems } from '../../sheet/check-audits.ts';
import { isObject } from '../../sheet/fault.ts';
import { parseSheet } from '../../sheet/parse.ts';
import { BadSheet } from '../../sheet/problem.ts';
import type { AuditRecord, Sheet } from '../../sheet/sheet.ts';
import { writeSheet } from '../../sheet/write.ts';
import { type Opened, saveSheet } from './sheet.ts';

/**
 * Saves a sheet that is being answered. An audit made meanwhile by another command adds its record to the file and touches
 * nothing else: the record is kept, and so are the answers. Any other change by somebody else is left to `saveSheet`.
 */
export function saveAnswers(opened: Opened, sheet: Sheet): Opened {
	const audits = union(opened.sheet.audits, sheet.audits);
	const mine = { ...sheet, audits };
	const { place, mark } = opened;
	if (place.kind === 'stdin') return { ...opened, sheet: mine };
	const there = readThere(place.path);
	const theirs = there && there.mark !== mark ? auditsAddedTo(opened.sheet, there.text) : null;
	if (!there || !theirs) return saveSheet(opened, mine);
	return saveSheet({ ...opened, mark: there.mark }, { ...mine, audits: union(theirs, audits) });
}

function readThere(path: string): Read | null {
	try {
		return readWhole(path);
	} catch (error) {
		asProblem(path, error);
		return null;
	}
}

/** The audits of a file that differs from a sheet in them alone; null when anything else differs. */
function auditsAddedTo(sheet: Sheet, text: string): readonly AuditRecord[] | null {
	try {
		const data = parseSheet(text);
		if (!isObject(data) || !Array.isArray(data.audits) || [...auditProblems(data.audits)].length > 0) return null;
		const bare = (one: object) => JSON.stringify({ ...one, audits: [] });
		return bare(data) === bare(parseSheet(writeSheet(sheet)) as object) ? data.audits : null;
	} catch (error) {
		if (error instanceof BadSheet) return null;
		throw error;
	}
}

/** The records of the first, then what the second has besides. */
function union(first: readonly AuditRecord[], second: readonly AuditRecord[]): readonly AuditRecord[] {
	if (first === second) return first;
	const known = new Set(first.map(record => JSON.stringify(record)));
	const more = second.filter(record => !known.has(JSON.stringify(record)));
	return more.length === 0 ? first : [...first, ...more];
}
