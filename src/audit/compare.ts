import type { AuditRecord, RecordedVerdict } from '../sheet/sheet.ts';
import type { Assessment } from './assess.ts';
import type { Change, Since } from './audit.ts';
import { figuresIn, fingerprintOfLog, recordOf, sameAnswers } from './record.ts';
import { codeOf, codesIn, lineKey } from './record-codes.ts';

/** A distance has moved when it differs by more than this share: less is arithmetic. */
const noise = 1e-6;

/** What changed from an earlier audit to this one. A finding is the same by rule and subject, whatever its words say. */
export function compare(before: AuditRecord, assessment: Assessment): Since {
	const now = recordOf(assessment);
	const by = before.rules !== now.rules && sameAnswers(before, now) ? 'rules' : 'answers';
	return {
		date: before.date,
		logs: logsSince(before, assessment),
		changes: changesBetween(before, assessment.audit.findings, by),
		numbers: moved(before, assessment.audit),
	};
}

function logsSince({ logs }: AuditRecord, { sheet }: Assessment): Since['logs'] {
	return (sheet.logs ?? [])
		.filter(log => !logs?.includes(fingerprintOfLog(log)))
		.map(({ name, date, answers }) => ({ name, date, answers: Object.keys(answers) }));
}

/** Changes of verdict, in the order of rule and subject. Holding before and after is no change. */
export function changesBetween(
	before: AuditRecord,
	findings: readonly RecordedVerdict[],
	by: Change['by'] = 'answers',
): Change[] {
	const failed = new Map(before.verdicts.map(verdict => [lineKey(verdict), verdict]));
	const [held, undecided] = [codesIn(before.held ?? ''), codesIn(before.undecided ?? '')];
	const verdictOf = (key: string): Was | undefined => {
		const known = failed.get(key);
		if (known) return known;
		const code = codeOf(key);
		return held.has(code) ? { verdict: 'holds' } : undecided.has(code) ? { verdict: 'cannot-tell' } : undefined;
	};
	const fresh = new Map(findings.map(finding => [lineKey(finding), finding]));
	return [...new Set([...failed.keys(), ...fresh.keys()])].sort().flatMap((key): Change[] => {
		const [was, is] = [verdictOf(key), fresh.get(key)];
		const { rule, subject = null } = (is ?? failed.get(key))!;
		const change = changeOf(was, is);
		return change ? [{ rule, subject, change, by: change === 'still' ? null : by }] : [];
	});
}

type Was = Pick<RecordedVerdict, 'verdict' | 'distance'>;

function changeOf(was: Was | undefined, is: Was | undefined): Change['change'] | null {
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

function moved({ numbers }: AuditRecord, audit: Assessment['audit']): Since['numbers'] {
	return [...figuresIn(audit)].sort(byName).flatMap(([name, after]) => {
		const before = numbers[name];
		if (before === undefined || Math.abs(after - before) <= noise * Math.max(Math.abs(before), Math.abs(after)))
			return [];
		return [{ name, unit: audit.quantities[name]?.unit ?? '1', before, after }];
	});
}

const byName = ([a]: readonly [string, number], [b]: readonly [string, number]): number => (a < b ? -1 : 1);
