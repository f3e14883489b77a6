import { checkAnswers } from './check-answers.ts';
import { auditProblems } from './check-audits.ts';
import { logProblems } from './check-logs.ts';
import { plugProblems } from './check-plugs.ts';
import { isObject } from './fault.ts';
import { BadSheet, noteProblem, type SheetProblem, shown } from './problem.ts';
import type { Question } from './question.ts';
import { type Answers, type AuditRecord, longestName, type Sheet, sheetFormat, sheetVersion } from './sheet.ts';
import { unsafeNumbers } from './unsafe-numbers.ts';

/** The versions that are read. */
const versions = sheetVersion === 1 ? '1' : `1 to ${sheetVersion}`;

/** A sheet that can be used, with what looks odd in it. */
export interface Checked {
	readonly sheet: Sheet;
	/** Values outside their plausible range, and units that something must be said about. */
	readonly warnings: readonly SheetProblem[];
}

/**
 * Checks what a sheet's JSON holds against the questions. Throws a BadSheet with every problem at once.
 * Version 1 is the first: there is no older one to bring up to date yet. A newer one is refused.
 */
export function checkSheet(data: unknown, questions: readonly Question[]): Checked {
	const problems: SheetProblem[] = [];
	const warnings: SheetProblem[] = [];
	const refuse = (path: string, found: unknown, accepted: string) =>
		noteProblem(problems, { path, found: shown(found), accepted });
	if (!isObject(data)) {
		throw new BadSheet([
			{ path: 'sheet', found: shown(data), accepted: 'a JSON object with format, version, name, units, answers' },
		]);
	}
	const top = data;
	if (top.format !== sheetFormat) refuse('format', top.format, `"${sheetFormat}"`);
	if (typeof top.version === 'number' && top.version > sheetVersion) {
		throw new BadSheet([
			{
				path: 'version',
				found: `${top.version}, newer than this program knows`,
				accepted: `${versions}. Update swap-audit to read this sheet`,
			},
		]);
	}
	if (!Number.isInteger(top.version) || (top.version as number) < 1)
		refuse('version', top.version, `a whole number: ${versions}`);
	if (top.name !== undefined && typeof top.name !== 'string') refuse('name', top.name, 'a text');
	if (typeof top.name === 'string' && top.name.length > longestName)
		refuse('name', top.name, `at most ${longestName} characters`);
	if (top.units !== undefined && top.units !== 'us' && top.units !== 'metric')
		refuse('units', top.units, '"us" or "metric"');
	for (const problem of auditProblems(top.audits === undefined ? [] : top.audits)) noteProblem(problems, problem);
	for (const problem of unsafeNumbers(top)) noteProblem(problems, problem);
	if (top.plugs !== undefined) for (const problem of plugProblems(top.plugs)) noteProblem(problems, problem);
	if (top.logs !== undefined) for (const problem of logProblems(top.logs)) noteProblem(problems, problem);
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
