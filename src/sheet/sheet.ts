import type { PlugHalf } from './plugs.ts';
import type { UnitSet } from './question.ts';

export const sheetFormat = 'swap-audit/sheet';
export const sheetVersion = 1;

/** How an answer is known; decides how far a number may be off. */
export const knownBy = ['measured', 'paperwork', 'estimate', 'not-known'] as const;
export type KnownBy = (typeof knownBy)[number];

/** One answer as it stands in the file. It has a `value`, or is `not-known`. */
export interface Answer {
	readonly value?: unknown;
	readonly unit?: string | readonly string[];
	readonly known?: KnownBy;
	readonly spread?: number;
	readonly note?: string;
}

/** One circuit of an answer of the kind `circuits`: amps, and feet one way. */
export interface CircuitAnswer {
	readonly circuit: string;
	readonly from?: string;
	readonly to?: string;
	readonly state: 'done' | 'to-do' | 'not-used';
	readonly load?: number;
	readonly length?: number;
}

/** A verdict kept from an earlier audit: as little as a comparison needs. */
export interface RecordedVerdict {
	readonly rule: string;
	readonly subject?: string | null;
	readonly verdict: string;
	/** How far past its threshold, as a share of it; none when there is no figure. */
	readonly distance?: number | null;
}

/** What an audit leaves in the sheet. */
export interface AuditRecord {
	readonly date: string;
	/** The sheet's name then. */
	readonly name?: string;
	readonly rules: string;
	/** What failed; a record of an older program has every verdict here. */
	readonly verdicts: readonly RecordedVerdict[];
	/** What held and what could not be decided, each line as four characters that stand for it. */
	readonly held?: string;
	readonly undecided?: string;
	readonly numbers: Readonly<Record<string, number>>;
	/** The logs that were in the sheet, each by its fingerprint. */
	readonly logs?: readonly string[];
	/** Fingerprint of the answers in effect, so that a change of answers is distinguished from a change of rules; once one an answer. */
	readonly answers: string | Readonly<Record<string, string>>;
}

/** One figure that a log gave, in the canonical unit of its quantity. */
export interface RecordedFigure {
	/** Null where the log does not show it; then `missing` says what would. */
	readonly value: unknown;
	readonly unit: string | null;
	readonly low: number | null;
	readonly high: number | null;
	readonly missing: readonly string[];
}

/** A figure of one pull. */
export interface RecordedInPull extends RecordedFigure {
	readonly pull: number;
}

/** One channel at one engine speed of a pull, in the canonical unit: the median, the standard deviation of a reading, their count. */
export type RecordedReading = readonly [value: number, noise: number, count: number];

/** What the part of a pull that counts showed over engine speed, a few points; lambda is moved by its lag. */
export interface RecordedPull {
	readonly pull: number;
	readonly gear: number | null;
	readonly points: readonly {
		/** rpm */
		readonly speed: number;
		/** s since the first row */
		readonly time: number;
		readonly channels: Readonly<Record<string, RecordedReading>>;
	}[];
}

/** A log that was judged and kept: what it showed, not its rows. */
export interface LogRecord {
	readonly name: string;
	readonly sha256: string;
	readonly date: string;
	/** How its columns were read; offered for the next file with the same headers. */
	readonly channels: readonly {
		readonly channel: string;
		readonly header: string;
		readonly unit: string;
		/** How it was recognized: by its header, or by somebody. */
		readonly by: string;
		/** s by which it is late; null where that is not known. */
		readonly lag: number | null;
	}[];
	/** By id of a log quantity: a figure, or a list with one a pull. */
	readonly quantities: Readonly<Record<string, RecordedFigure | readonly RecordedInPull[]>>;
	readonly points: readonly RecordedPull[];
	/** The answers that were taken from it, as they were written. */
	readonly answers: Readonly<Record<string, Answer>>;
	/** The model fitted to it; null where none was. */
	readonly fit: Readonly<Record<string, unknown>> | null;
	/** The answers that its figures and its fit were worked out with: once one has another value, that no longer counts. */
	readonly rests_on: Readonly<Record<string, Answer>>;
}

export type Answers = Readonly<Record<string, Readonly<Record<string, Answer>>>>;

/** A build sheet. Keys that are not ours are kept as they are. */
export interface Sheet {
	readonly format: typeof sheetFormat;
	readonly version: number;
	readonly name: string;
	readonly units: UnitSet;
	readonly answers: Answers;
	readonly audits: readonly AuditRecord[];
	/** Halves of plugs, pin by pin. */
	readonly plugs?: readonly PlugHalf[];
	/** Logs that were judged and kept, the newest last. */
	readonly logs?: readonly LogRecord[];
	readonly [other: string]: unknown;
}

/** Cylinders of an engine whose count is not answered: this is for V8s. */
export const usualCylinders = 8;

/** UTF-16 units of a sheet's name at most. */
export const longestName = 200;

/** A new sheet with nothing answered. A name that is too long is cut. */
export function emptySheet(name: string, units: UnitSet = 'us'): Sheet {
	const cut = name.slice(0, longestName).replace(/[\ud800-\udbff]$/, '');
	return { format: sheetFormat, version: sheetVersion, name: cut, units, answers: {}, audits: [] };
}

/** The answer to a question, if there is one. */
export function answerTo(sheet: Sheet, id: string): Answer | undefined {
	const [section, name] = splitId(id);
	const of = Object.hasOwn(sheet.answers, section) ? sheet.answers[section] : undefined;
	return of && Object.hasOwn(of, name) ? of[name] : undefined;
}

/** The sheet with one answer set, or taken away (undefined). Never changes the sheet it is given. */
export function withAnswer(sheet: Sheet, id: string, answer: Answer | undefined): Sheet {
	const [section, name] = splitId(id);
	const { [name]: _old, ...rest } = sheet.answers[section] ?? {};
	const changed = answer === undefined ? rest : { ...sheet.answers[section], [name]: answer };
	return { ...sheet, answers: { ...sheet.answers, [section]: changed } };
}

/** `engine.bore` as its section and its name. */
export function splitId(id: string): [section: string, name: string] {
	const dot = id.indexOf('.');
	return [id.slice(0, dot), id.slice(dot + 1)];
}
