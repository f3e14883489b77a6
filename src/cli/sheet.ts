import { lastGoodAdvice } from '../files/last-good.ts';
import { FileProblem } from '../files/problem.ts';
import { type Mark, readPlace } from '../files/read.ts';
import { saveWhole } from '../files/save.ts';
import { type Place, where } from '../files/where.ts';
import { type Checked, checkSheet } from '../sheet/check.ts';
import { parseSheet } from '../sheet/parse.ts';
import { BadSheet, writeSheetProblem } from '../sheet/problem.ts';
import type { Question } from '../sheet/question.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { writeSheet } from '../sheet/write.ts';
import { say } from './say.ts';

/** A sheet read for a command, with what saving it again needs. */
export interface Opened extends Checked {
	readonly place: Place;
	/** The bytes last read or saved; null before the first save. */
	readonly mark: Mark | null;
}

/** Reads and checks the sheet that SHEET means. Throws FileProblem or BadSheet; odd values are told on stderr. */
export function openSheet(argument: string, questions: readonly Question[]): Opened {
	const place = where(argument, process.env, process.cwd());
	const { text, mark } = readPlace(place);
	try {
		const checked = checkSheet(parseSheet(text), questions);
		for (const warning of checked.warnings) say(`Odd: ${writeSheetProblem(warning)}`);
		return { ...checked, place, mark };
	} catch (error) {
		if (error instanceof BadSheet && place.kind !== 'stdin') {
			const advice = lastGoodAdvice(place.path);
			if (advice) say(advice);
		}
		throw error;
	}
}

/** Saves a sheet where it was read from; gives it as it is open then. Standard input cannot be saved to: it is left alone. */
export function saveSheet(opened: Opened, sheet: Sheet): Opened {
	const { place, mark } = opened;
	if (place.kind === 'stdin') return { ...opened, sheet };
	const saved = saveWhole(place.path, writeSheet(sheet), mark);
	if (saved.result === 'saved') {
		if (saved.unconfirmed) say(saved.unconfirmed.message);
		return { ...opened, sheet, mark: saved.mark };
	}
	const what = saved.found === 'gone' ? 'the sheet was taken away' : 'another program wrote the sheet';
	throw new FileProblem(place.path, `${what} meanwhile`, `Yours is kept as ${saved.yours}.`);
}
