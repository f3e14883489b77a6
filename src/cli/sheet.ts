import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { listSheets } from '../files/folders.ts';
import { lastGoodAdvice } from '../files/last-good.ts';
import { FileProblem, shown } from '../files/problem.ts';
import { type Mark, type Read, readPlace } from '../files/read.ts';
import { saveWhole } from '../files/save.ts';
import { type Place, where } from '../files/where.ts';
import { type Checked, checkSheet } from '../sheet/check.ts';
import { parseSheet } from '../sheet/parse.ts';
import { BadSheet, writeSheetProblem } from '../sheet/problem.ts';
import type { Question } from '../sheet/question.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { writeSheet } from '../sheet/write.ts';
import { BadUsage } from './exit.ts';
import { say } from './say.ts';

/** A sheet read for a command, with what saving it again needs. */
export interface Opened extends Checked {
	readonly place: Place;
	/** The bytes last read or saved; null before the first save. */
	readonly mark: Mark | null;
}

/** Reads and checks the sheet that SHEET means. Throws FileProblem or BadUsage; odd values are told on stderr. */
export function openSheet(argument: string, questions: readonly Question[]): Opened {
	const place = where(argument, process.env, process.cwd());
	const { text, mark } = readThere(argument, place);
	const named = place.kind === 'stdin' ? 'standard input' : place.path;
	const advice = () => (place.kind === 'stdin' ? null : lastGoodAdvice(place.path));
	const checked = takenFrom(named, () => checkSheet(parseSheet(text), questions), advice);
	for (const warning of checked.warnings) say(`Odd: ${writeSheetProblem(warning)}`);
	return { ...checked, place, mark };
}

/** Does the reading of a text; what is wrong with it comes out under the name of where it is from. */
export function takenFrom<T>(named: string, read: () => T, advice: () => string | null = () => null): T {
	try {
		return read();
	} catch (error) {
		if (!(error instanceof BadSheet)) throw error;
		const lines = [`${shown(named)} cannot be used as it is; nothing was changed.`, error.message, advice()];
		throw new BadUsage(lines.filter(Boolean).join('\n'));
	}
}

/** The text of a sheet; when there is none, what to do instead. */
function readThere(argument: string, place: Place): Read {
	try {
		return readPlace(place);
	} catch (error) {
		if (!(error instanceof FileProblem) || error.code !== 'ENOENT' || place.kind === 'stdin') throw error;
		const start = `To start it: swap-audit interview ${quoted(argument)}`;
		if (place.kind === 'path') throw new BadUsage(`${shown(place.path)}: there is no such sheet. ${start}`);
		const names = listSheets(dirname(place.path)).map(({ name }) => name);
		const others = names.length > 0 ? ` There are: ${names.join(', ')}.` : '';
		const here = existsSync(argument) ? ` The file in this folder: ./${argument}.` : '';
		throw new BadUsage(`No sheet is named ${shown(argument)} (${shown(place.path)}).${others}${here} ${start}`);
	}
}

/** A word as a shell takes it. */
const quoted = (word: string): string => (/^[\w./-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`);

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
