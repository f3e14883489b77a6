import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { BadSheet, type SheetProblem } from '../../src/sheet/problem.ts';
import { buildSheet, testModel } from '../support/model.ts';

/** A sheet as JSON data, to be spoilt. */
export type Loose = { answers: Record<string, Record<string, unknown>> } & Record<string, unknown>;

/** The full boosted build with one thing changed, as JSON text. */
export function changed(change: (sheet: Loose) => void): string {
	const sheet = structuredClone(buildSheet('boosted')) as never as Loose;
	change(sheet);
	return JSON.stringify(sheet);
}

/** The full boosted build with one answer set. */
export const answered = (id: string, answer: unknown): string =>
	changed(({ answers }) => {
		const [section, name] = id.split('.') as [string, string];
		answers[section]![name] = answer;
	});

/** Everything that is wrong with a sheet's text; none when it is taken. */
export function problemsOf(text: string): readonly SheetProblem[] {
	try {
		opened(text);
		return [];
	} catch (error) {
		if (error instanceof BadSheet) return error.problems;
		throw error;
	}
}

/** A sheet's text, checked; throws what is wrong. */
export const opened = (text: string) => checkSheet(parseSheet(text), testModel().rulebook.questions);
