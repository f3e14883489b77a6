import { checkAnswer } from './check-answer.ts';
import { BadSheet, type SheetProblem, shown } from './problem.ts';
import type { Question } from './question.ts';
import { type Answers, type AuditRecord, type Sheet, sheetFormat, sheetVersion } from './sheet.ts';

/** A sheet that can be used, with what looks odd in it. */
export interface Checked {
	readonly sheet: Sheet;
	/** Values outside their plausible range. */
	readonly warnings: readonly SheetProblem[];
}

/**
 * Checks what a sheet's JSON holds against the questions. Throws a BadSheet with every problem at once.
 * An older version is brought up to date here (see migrate); a newer one is refused.
 */
export function checkSheet(data: unknown, questions: readonly Question[]): Checked {
	const problems: SheetProblem[] = [];
	const warnings: SheetProblem[] = [];
	const refuse = (path: string, found: unknown, accepted: string) =>
		problems.push({ path, found: shown(found), accepted });
	if (data === null || typeof data !== 'object' || Array.isArray(data)) {
		throw new BadSheet([
			{ path: 'sheet', found: shown(data), accepted: 'a JSON object with format, version, name, units, answers' },
		]);
	}
	const top = data as Record<string, unknown>;
	if (top.format !== sheetFormat) refuse('format', top.format, `"${sheetFormat}"`);
	if (typeof top.version === 'number' && top.version > sheetVersion) {
		throw new BadSheet([
			{
				path: 'version',
				found: `${top.version}, newer than this program knows`,
				accepted: `1 to ${sheetVersion}: update swap-audit to read this sheet`,
			},
		]);
	}
	if (!Number.isInteger(top.version) || (top.version as number) < 1)
		refuse('version', top.version, `a whole number, 1 to ${sheetVersion}`);
	if (top.name !== undefined && typeof top.name !== 'string') refuse('name', top.name, 'a text');
	if (typeof top.name === 'string' && top.name.length > 200) refuse('name', top.name, 'at most 200 characters');
	if (top.units !== undefined && top.units !== 'us' && top.units !== 'metric')
		refuse('units', top.units, '"us" or "metric"');
	if (top.audits !== undefined && !(Array.isArray(top.audits) && top.audits.every(isRecord))) {
		refuse('audits', top.audits, 'the list of audits that the program keeps, or []');
	}
	for (const key of ['__proto__', 'constructor', 'prototype']) {
		if (Object.hasOwn(top, key)) refuse(key, key, 'no key of this name');
	}
	checkAnswers(top.answers, questions, { problems, warnings });
	if (problems.length > 0) throw new BadSheet(problems);
	const sheet: Sheet = {
		...top,
		format: sheetFormat,
		version: sheetVersion,
		name: (top.name as string | undefined) ?? 'Unnamed build',
		units: (top.units as Sheet['units'] | undefined) ?? 'us',
		answers: top.answers as Answers,
		audits: (top.audits as AuditRecord[] | undefined) ?? [],
	};
	return { sheet, warnings };
}

function checkAnswers(
	answers: unknown,
	questions: readonly Question[],
	into: { problems: SheetProblem[]; warnings: SheetProblem[] },
): void {
	const refuse = (path: string, found: unknown, accepted: string) =>
		into.problems.push({ path, found: shown(found), accepted });
	const isObject = (value: unknown): value is Record<string, unknown> =>
		value !== null && typeof value === 'object' && !Array.isArray(value);
	if (!isObject(answers)) {
		refuse('answers', answers, 'an object with a section of answers each, {} for none');
		return;
	}
	const byId = new Map(questions.map(question => [question.id, question]));
	const sections = [...new Set(questions.map(({ id }) => id.split('.')[0]!))];
	const cylinders = cylindersIn(answers);
	for (const section of Object.keys(answers)) {
		const inside = answers[section];
		if (!sections.includes(section))
			refuse(`answers.${section}`, section, `one of the sections ${sections.join(', ')}`);
		else if (!isObject(inside)) refuse(section, inside, 'an object with the answers of this section');
		else {
			for (const name of Object.keys(inside)) {
				const question = byId.get(`${section}.${name}`);
				if (question) checkAnswer(question, inside[name], cylinders, into);
				else refuse(`${section}.${name}`, name, nearest(`${section}.${name}`, [...byId.keys()]));
			}
		}
	}
}

/** How many cylinders the lists of this sheet have: as answered, else the usual 8. */
function cylindersIn(answers: Record<string, unknown>): number {
	const engine = Object.hasOwn(answers, 'engine')
		? (answers.engine as Record<string, { value?: unknown }> | null)
		: null;
	const value = engine && Object.hasOwn(engine, 'cylinders') ? engine.cylinders?.value : undefined;
	return Number.isInteger(value) && (value as number) > 0 && (value as number) <= 16 ? (value as number) : 8;
}

/** The answers of the section, those that share the most letters first: for a slip of the fingers. */
function nearest(id: string, ids: readonly string[]): string {
	const section = id.slice(0, id.indexOf('.') + 1);
	const letters = new Set(id.slice(section.length));
	const likeness = (other: string) => {
		const theirs = new Set(other.slice(section.length));
		return [...theirs].filter(letter => letters.has(letter)).length / (theirs.size + letters.size);
	};
	const near = ids.filter(other => other.startsWith(section)).sort((a, b) => likeness(b) - likeness(a));
	return `an answer of this section, like ${near.slice(0, 3).join(', ')}`;
}

function isRecord(record: unknown): boolean {
	if (record === null || typeof record !== 'object') return false;
	const { date, verdicts } = record as Record<string, unknown>;
	return typeof date === 'string' && Array.isArray(verdicts);
}
