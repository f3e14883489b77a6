import type { AuditRecord, RecordedVerdict } from '../sheet/sheet.ts';
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
	return { date: audit.date, rules: audit.rules, name: sheet.name, ...recorded(audit), answers };
}

function recorded(audit: Audit): { verdicts: RecordedVerdict[]; numbers: Record<string, number> } {
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

/** The audit that another file holds: the last one in a sheet, or the audit itself as JSON; null when it holds none. */
export function earlierIn(data: unknown): AuditRecord | null {
	if (data === null || typeof data !== 'object') return null;
	const file = data as { format?: unknown; audits?: AuditRecord[] };
	if (file.format === auditFormat) {
		const audit = data as Audit;
		return { date: audit.date, rules: audit.rules, ...recorded(audit), answers: {} };
	}
	return Array.isArray(file.audits) ? (file.audits.at(-1) ?? null) : null;
}
