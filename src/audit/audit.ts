import type { Fit } from '../fit/fit.ts';
import type { readingStates } from '../rulebook/expected-reading.ts';
import type { Harm, Stage, VerdictWord } from '../rulebook/rulebook.ts';
import type { Effort, UnitSet } from '../sheet/question.ts';
import type { KnownBy } from '../sheet/sheet.ts';

/** What `audit --json` says that it is; the version rises when a key changes its meaning or goes. */
export const auditFormat = 'swap-audit/audit';
export const auditVersion = 1;

/** How far a stage is from ready: lines by what keeps them open. */
export interface StageReadiness {
	readonly stage: Stage;
	/** Whether this stage and every one before it hold nothing up. */
	readonly ready: boolean;
	readonly fails: number;
	/** Those that wait for answers which can be had before it. */
	readonly cannot_tell: number;
	readonly unproved: number;
	readonly prove_during: number;
	/** Earlier stages that are held up by something of their own. */
	readonly waits_for: readonly Stage[];
}

/** One rule on one subject, in words of the unit set asked for and numbers in canonical units. */
export interface Finding {
	readonly rule: string;
	readonly subject: string | null;
	readonly section: string;
	readonly stage: Stage;
	readonly harm: Harm;
	readonly verdict: VerdictWord;
	/** It holds, but on something that nobody has found out: not proved is not passed. */
	readonly unproved: boolean;
	/** It cannot be judged, and all that it waits for shows only at its stage or later. */
	readonly prove_during: boolean;
	/** It cannot be judged, and waits for something that such a build is not asked for: it holds nothing up. */
	readonly not_wanted: boolean;
	/** It fails, and the rule named here fails too and says the same and more: it is not listed. Null: it stands by itself. */
	readonly covered_by: string | null;
	/** Share of the draws with this verdict; null unless it fails or holds, and without draws. */
	readonly sure: number | null;
	readonly title: string;
	readonly why: string;
	readonly do: readonly string[];
	readonly prove: string;
	readonly parts: readonly string[];
	readonly numbers: Readonly<Record<string, unknown>>;
	readonly missing: readonly string[];
	readonly assumed: readonly string[];
	readonly cautions: readonly string[];
	readonly source: string;
	/** How far past its threshold, as a share of it; null without a figure. */
	readonly distance: number | null;
}

/** A quantity in its unit: its value, the ends of its band, what it lacks and what it takes for granted. */
export interface QuantityValue {
	readonly value: unknown;
	readonly unit: string | null;
	readonly low: number | null;
	readonly high: number | null;
	readonly bound: 'above' | 'below' | null;
	readonly missing: readonly string[];
	readonly assumed: readonly string[];
}

/** A rung of the ladder: what gives out, and where. */
export interface LimitRung {
	readonly limit: string;
	readonly title: string;
	readonly value: number | null;
	readonly unit: string;
	readonly low: number | null;
	readonly high: number | null;
	readonly bound: 'above' | 'below' | null;
	readonly of_target: number | null;
	readonly power: number | null;
	readonly raise: string;
	readonly missing: readonly string[];
}

/** An answer worth finding out, by the verdicts it could turn. */
export interface NextAnswer {
	readonly answer: string;
	readonly known: KnownBy | null;
	readonly flips: readonly string[];
	readonly weight: number;
	readonly effort: Effort;
	readonly why: string;
}

/** What to expect on a gauge or a meter in one state of the car. */
export interface ExpectedReading {
	readonly state: (typeof readingStates)[number];
	readonly reading: string;
	readonly title: string;
	readonly value: number | null;
	readonly unit: string;
	readonly low: number | null;
	readonly high: number | null;
	/** The answer that holds a measured reading of it, and that reading. */
	readonly answer: string | null;
	readonly measured: number | null;
	readonly missing: readonly string[];
	readonly assumed: readonly string[];
}

/** What became of a line since an audit; `by`: whether answers or rules made it so. */
export interface Change {
	readonly rule: string;
	readonly subject: string | null;
	readonly change: 'settled' | 'new' | 'worse' | 'better' | 'still' | 'no-longer-tellable';
	readonly by: 'answers' | 'rules' | null;
}

/** What has changed since an earlier audit of the sheet. */
export interface Since {
	readonly date: string;
	/** Logs that were not there then, with the answers that were taken from each. */
	readonly logs: readonly { readonly name: string; readonly date: string; readonly answers: readonly string[] }[];
	readonly changes: readonly Change[];
	readonly numbers: readonly {
		readonly name: string;
		readonly unit: string;
		readonly before: number;
		readonly after: number;
	}[];
}

/** What a rule pack has done to an audit. */
export interface PackUse {
	readonly pack: string;
	/** Answers for which its usual values stand in. */
	readonly prefills: readonly string[];
	readonly changes: readonly { readonly rule: string; readonly fields: readonly string[] }[];
}

/** A fit to logs as other programs read it: bands are low, middle and high. */
export interface FitJson {
	readonly applied: boolean;
	readonly effective: number;
	readonly moved: readonly (Fit['moved'][number] & { readonly unit: string })[];
	readonly unsettled: Fit['unsettled'];
	readonly misfit: Fit['misfit'];
	/** By sensor the least error that this log would show. */
	readonly detects: readonly { readonly id: string; readonly unit: string; readonly least: number }[];
	/** Logs that fit no car of these answers while the others do: nothing rests on them. */
	readonly left_out: readonly { readonly log: string; readonly look_at: readonly string[] }[];
}

/** The same in an audit, with the days of its logs. */
export interface FitOfAudit extends FitJson {
	readonly days: readonly string[];
}

/** Enough draws for a steady second digit of how sure a verdict is; what stages are decided by. */
export const usualDraws = 400;

/** The audit as other programs read it. Every key is always there. */
export interface Audit {
	readonly format: typeof auditFormat;
	readonly version: typeof auditVersion;
	readonly sheet: string;
	readonly date: string;
	readonly tool: string;
	readonly rules: string;
	readonly packs: readonly PackUse[];
	readonly stages: readonly StageReadiness[];
	readonly findings: readonly Finding[];
	readonly quantities: Readonly<Record<string, QuantityValue>>;
	readonly limits: readonly LimitRung[];
	readonly next: readonly NextAnswer[];
	readonly readings: readonly ExpectedReading[];
	/** The model fitted to logs of this car, and of which days; null without one. */
	readonly fit: FitOfAudit | null;
	readonly since: Since | null;
}

/** The day, units and version to print, and how much to work out. */
export interface AuditOptions {
	readonly date: string;
	readonly units: UnitSet;
	readonly tool: string;
	/** How many draws show how sure a verdict is; 0: none, and `sure`, `low`, `high` stay null. */
	readonly draws: number;
	/** The same for what is proved and what is not, which decides about stages; left out: as many as `draws`. */
	readonly gateDraws?: number;
	/** A page shows the bands of limits and words of what may be listed: no others are worked out. Left out: the whole audit. */
	readonly extent?: 'whole' | 'page';
	/** Whether the fit to logs is left aside. */
	readonly unfitted?: boolean;
	/** Whether to work out the next step in boost; left out: when there are draws. */
	readonly step?: boolean;
	/** Whether to work out what to measure next; left out: when there are draws. */
	readonly next?: boolean;
}
