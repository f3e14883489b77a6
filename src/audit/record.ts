import { auditProblems, isVerdict } from '../sheet/check-audits.ts';
import { isNumber, isObject } from '../sheet/fault.ts';
import type { AuditRecord, LogRecord, RecordedVerdict } from '../sheet/sheet.ts';
import type { Assessment } from './assess.ts';
import { type Audit, auditFormat } from './audit.ts';
import { codesOf, countCodes } from './record-codes.ts';

/** Figures that a recheck shows before and after; few, so that a record stays small. */
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

/** What an audit leaves in the sheet: what failed, held and could not be judged, key figures, and which answers those were. */
export function recordOf({ audit, sheet, model, state }: Assessment): AuditRecord {
	const given = model.rulebook.questions.flatMap(({ id }) => {
		const answer = state.given.get(model.graph.slotOf.get(id)!);
		return answer ? [[id, answer.value]] : [];
	});
	// A log is as good as an answer: with another one an audit is no longer of the same answers.
	const logs = (sheet.logs ?? []).map(fingerprintOfLog);
	const answers = model.hash(JSON.stringify([...given, logs])).slice(0, 12);
	const record = { date: audit.date, rules: audit.rules, name: sheet.name, ...recorded(audit), answers };
	return logs.length > 0 ? { ...record, logs } : record;
}

/** A log as a record of an audit names it. */
export const fingerprintOfLog = ({ sha256 }: LogRecord): string => sha256.slice(0, 12);

/** Digits of a figure in a record: enough to distinguish a change from arithmetic. */
const digits = 7;

const rounded = (value: number): number => Number(value.toPrecision(digits));

type Figures = Pick<Audit, 'limits' | 'quantities'>;

/** The figures that a recheck shows, by the id of a quantity or a limit. */
export function figuresIn({ limits, quantities }: Figures): Map<string, number> {
	const figures = [
		...keyFigures.map(id => [id, quantities[id]?.value] as const),
		...limits.map(({ limit, value }) => [limit, value] as const),
	];
	return new Map(figures.flatMap(([id, value]) => (typeof value === 'number' ? [[id, value]] : [])));
}

type Recorded = Pick<AuditRecord, 'verdicts' | 'held' | 'undecided' | 'numbers'>;

function recorded({ findings, ...figures }: Figures & Pick<Audit, 'findings'>): Recorded {
	const codes = (...words: string[]) => codesOf(findings.filter(({ verdict }) => words.includes(verdict)));
	return {
		verdicts: findings.filter(({ verdict }) => verdict === 'fails').map(recordedVerdict),
		held: codes('holds'),
		undecided: codes('cannot-tell', 'not-evaluated'),
		numbers: Object.fromEntries([...figuresIn(figures)].map(([id, value]) => [id, rounded(value)])),
	};
}

const recordedVerdict = ({ rule, subject, verdict, distance }: RecordedVerdict): RecordedVerdict => ({
	rule,
	...(subject == null ? {} : { subject }),
	verdict,
	...(distance == null ? {} : { distance: rounded(distance) }),
});

/** So many audits are kept in a sheet; older ones are dropped. */
const mostRecords = 20;

/** The records of a sheet with one more, the oldest dropped; none is added for an audit that says the same as the last, whatever its day. */
export function withRecord(audits: readonly AuditRecord[], now: AuditRecord): AuditRecord[] {
	const last = audits.at(-1);
	const same = last !== undefined && JSON.stringify({ ...last, date: '' }) === JSON.stringify({ ...now, date: '' });
	return (same ? [...audits] : [...audits, now]).slice(-mostRecords);
}

/** Whether two audits are of the same answers. One that was read from another file does not say. */
export function sameAnswers(one: AuditRecord, other: AuditRecord): boolean {
	return one.answers !== '' && JSON.stringify(one.answers) === JSON.stringify(other.answers);
}

/** The last audit of other answers than these: looking at an audit twice does not use up what there is to compare with. */
export function lastOfOtherAnswers(audits: readonly AuditRecord[], now: AuditRecord): AuditRecord | null {
	return audits.findLast(record => !sameAnswers(record, now)) ?? audits.at(-1) ?? null;
}

/** What a kept audit came to, in words. Nothing known is not nothing to do: what could not be judged is counted too. */
export function recordWords({ verdicts, undecided }: AuditRecord): string {
	const fails = verdicts.filter(({ verdict }) => verdict === 'fails').length;
	const open = undecided === undefined ? verdicts.filter(isUndecided).length : countCodes(undecided);
	const words = [fails > 0 ? `${fails} to do` : '', open > 0 ? `${open} not known yet` : ''].filter(Boolean);
	return words.length > 0 ? words.join(', ') : 'nothing to do';
}

const isUndecided = ({ verdict }: RecordedVerdict): boolean => verdict === 'cannot-tell' || verdict === 'not-evaluated';

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
	if (!Array.isArray(findings) || !findings.every(isVerdict) || !isObject(quantities)) return null;
	if (!Array.isArray(limits) || !limits.every(rung => isObject(rung) && (rung.value === null || isNumber(rung.value))))
		return null;
	return { date, rules, ...recorded({ limits, findings, quantities }), answers: '' };
}
