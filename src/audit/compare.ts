import type { AuditRecord, RecordedVerdict } from '../sheet/sheet.ts';
import type { Assessment } from './assess.ts';
import type { Change, Since } from './audit.ts';
import { fingerprintOfLog, recordOf } from './record.ts';

/** A distance has moved when it differs by more than this share: less is arithmetic. */
const noise = 1e-6;

/** What changed from an earlier audit to this one. A finding is the same by rule and subject, whatever its words say. */
export function compare(before: AuditRecord, assessment: Assessment): Since {
	const now = recordOf(assessment);
	return {
		date: before.date,
		logs: logsSince(before, assessment),
		changes: changesBetween(before, now),
		numbers: moved(before, now, assessment),
	};
}

function logsSince({ answers }: AuditRecord, { sheet }: Assessment): Since['logs'] {
	const there = (answers.logs ?? '').split(' ');
	return (sheet.logs ?? [])
		.filter(log => !there.includes(fingerprintOfLog(log)))
		.map(({ name, date, answers }) => ({ name, date, answers: Object.keys(answers) }));
}

const key = ({ rule, subject }: RecordedVerdict): string => `${rule}\n${subject ?? ''}`;

/** Changes of verdict, in the order of rule and subject. Holding before and after is no change. */
export function changesBetween(before: AuditRecord, now: AuditRecord): Change[] {
	const old = new Map(before.verdicts.map(verdict => [key(verdict), verdict]));
	const fresh = new Map(now.verdicts.map(verdict => [key(verdict), verdict]));
	const sameAnswers =
		Object.keys(before.answers).length > 0 &&
		JSON.stringify(sorted(before.answers)) === JSON.stringify(sorted(now.answers));
	const by = before.rules !== now.rules && sameAnswers ? 'rules' : 'answers';
	return [...new Set([...old.keys(), ...fresh.keys()])].sort().flatMap((id): Change[] => {
		const [was, is] = [old.get(id), fresh.get(id)];
		const { rule, subject } = (is ?? was)!;
		const change = changeOf(was, is);
		return change ? [{ rule, subject, change, by: change === 'still' ? null : by }] : [];
	});
}

function changeOf(was: RecordedVerdict | undefined, is: RecordedVerdict | undefined): Change['change'] | null {
	const failed = was?.verdict === 'fails';
	const fails = is?.verdict === 'fails';
	if (failed && fails) {
		const [old, now] = [was.distance ?? null, is.distance ?? null];
		if (old === null || now === null || Math.abs(now - old) <= noise * Math.max(1, Math.abs(old))) return 'still';
		return now > old ? 'worse' : 'better';
	}
	if (failed)
		return is?.verdict === 'cannot-tell' || is?.verdict === 'not-evaluated' ? 'no-longer-tellable' : 'settled';
	if (fails) return 'new';
	// What nobody knew and what is fine now is settled as well.
	if ((was?.verdict === 'cannot-tell' || was?.verdict === 'not-evaluated') && is?.verdict === 'holds') return 'settled';
	return was?.verdict === 'holds' && is?.verdict === 'cannot-tell' ? 'no-longer-tellable' : null;
}

const sorted = (answers: Readonly<Record<string, string>>) =>
	Object.entries(answers).sort(([a], [b]) => (a < b ? -1 : 1));

function moved(before: AuditRecord, now: AuditRecord, { audit }: Assessment): Since['numbers'] {
	return Object.keys(now.numbers)
		.sort()
		.flatMap(name => {
			const [was, is] = [before.numbers[name], now.numbers[name]!];
			if (was === undefined || Math.abs(is - was) <= noise * Math.max(Math.abs(was), Math.abs(is))) return [];
			return [{ name, unit: audit.quantities[name]?.unit ?? '1', before: was, after: is }];
		});
}
