import { auditProblems } from '../sheet/check-audits.ts';
import { isObject } from '../sheet/fault.ts';
import type { AuditRecord, LogRecord, RecordedVerdict } from '../sheet/sheet.ts';
import type { Assessment } from './assess.ts';
import { type Audit, auditFormat } from './audit.ts';

/** Figures that a recheck tells before and after; few, so that a record stays small. */
const keyFigures = [
	'engine.power',
	'engine.torque',
	'injectors.duty',
	'fuel.pump_margin',
	'ignition.spark_margin',
	'sensors.meter_headroom',
	'driveline.clutch_margin',
	'driveline.gearbox_margin',
	'engine.head_clamp_ratio',
	'charging.balance',
] as const;

/** What an audit leaves in the sheet: verdicts, key figures, and what each answer was. */
export function recordOf({ audit, sheet, model, state }: Assessment): AuditRecord {
	const answers: Record<string, string> = {};
	for (const { id } of model.rulebook.questions) {
		const given = state.given.get(model.graph.slotOf.get(id)!);
		if (given) answers[id] = model.hash(JSON.stringify(given.value)).slice(0, 12);
	}
	// A log is as good as an answer: with another one an audit is no longer of the same answers.
	if (sheet.logs && sheet.logs.length > 0) answers.logs = sheet.logs.map(fingerprintOfLog).join(' ');
	return { date: audit.date, rules: audit.rules, name: sheet.name, ...recorded(audit), answers };
}

/** A log as a record of an audit names it. */
export const fingerprintOfLog = ({ sha256 }: LogRecord): string => sha256.slice(0, 12);

function recorded(audit: Pick<Audit, 'limits' | 'findings' | 'quantities'>): {
	verdicts: RecordedVerdict[];
	numbers: Record<string, number>;
} {
	const limits = audit.limits.flatMap(({ limit, value }) => (value === null ? [] : [[limit, value] as const]));
	const figures = keyFigures.flatMap(id => {
		const value = audit.quantities[id]?.value;
		return typeof value === 'number' ? [[id, value] as const] : [];
	});
	return {
		verdicts: audit.findings
			.filter(({ verdict }) => verdict !== 'does-not-apply')
			.map(({ rule, subject, verdict, distance }) => ({ rule, subject, verdict, distance })),
		numbers: Object.fromEntries([...figures, ...limits]),
	};
}

/** So many audits are kept in a sheet; older ones are dropped. */
const mostKept = 20;

/** The records of a sheet with one more, the oldest dropped; none is added for an audit that says the same as the last, whatever its day. */
export function withRecord(audits: readonly AuditRecord[], now: AuditRecord): AuditRecord[] {
	const last = audits.at(-1);
	const same = last !== undefined && JSON.stringify({ ...last, date: '' }) === JSON.stringify({ ...now, date: '' });
	return (same ? [...audits] : [...audits, now]).slice(-mostKept);
}

/** The last audit of other answers than these: looking at an audit twice does not use up what there is to compare with. */
export function lastOfOtherAnswers(audits: readonly AuditRecord[], now: AuditRecord): AuditRecord | null {
	const said = (record: AuditRecord) => JSON.stringify(Object.entries(record.answers).sort());
	return audits.findLast(record => said(record) !== said(now)) ?? audits.at(-1) ?? null;
}

/** The audit that another file holds: the last one in a sheet, or the audit itself as JSON; null when it holds none that is whole. */
export function earlierIn(data: unknown): AuditRecord | null {
	if (!isObject(data)) return null;
	const record = data.format === auditFormat ? recordIn(data) : Array.isArray(data.audits) ? data.audits.at(-1) : null;
	// A file of another hand: it is held against what a record is, as those in the sheet are.
	const [problem] = auditProblems([record]);
	return problem ? null : (record as AuditRecord);
}

function recordIn(data: Record<string, unknown>): AuditRecord | null {
	const { limits, findings, quantities, date, rules } = data as unknown as Audit;
	if (![limits, findings].every(list => Array.isArray(list) && list.every(isObject)) || !isObject(quantities))
		return null;
	return { date, rules, ...recorded({ limits, findings, quantities }), answers: {} };
}
