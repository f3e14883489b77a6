import { dirname } from 'node:path';
import { exists } from '../../files/exists.ts';
import { listSheets } from '../../files/folders.ts';
import { lastGoodAdvice } from '../../files/last-good.ts';
import { locateSheet, type Place } from '../../files/paths.ts';
import { FileProblem, shown } from '../../files/problem.ts';
import { type ContentHash, largest, type Read, readPlace, readWhole } from '../../files/read.ts';
import { saveWhole } from '../../files/save.ts';
import { type Checked, checkSheet } from '../../sheet/check.ts';
import { parseSheet } from '../../sheet/parse.ts';
import { BadSheet, writeSheetProblem } from '../../sheet/problem.ts';
import type { Question } from '../../sheet/question.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { writeSheet } from '../../sheet/write.ts';
import { crashContext } from '../process/crash-context.ts';
import { BadUsage } from '../process/exit.ts';
import { printMessage } from '../process/output.ts';

/** A sheet read for a command, with what saving it again needs. */
export interface Opened extends Checked {
	readonly place: Place;
	/** The bytes last read or saved; null before the first save. */
	readonly mark: ContentHash | null;
}

/** Reads and checks the sheet that SHEET means. Throws FileProblem or BadUsage. */
export function openSheet(argument: string, questions: readonly Question[]): Opened {
	const place = locateSheet(argument, process.env, process.cwd());
	if (place.kind !== 'stdin') crashContext.path = place.path;
	const read = readThere(argument, place);
	const named = place.kind === 'stdin' ? 'standard input' : place.path;
	const back = () => (place.kind === 'stdin' ? '' : resumeHint(place.path));
	const checked = parseFrom(named, () => checkSheet(parseSheet(read.text), questions), back);
	return {
		...checked,
		place,
		// Most commands save nothing, and to load what makes a mark takes as long as to read the sheet.
		get mark() {
			return read.mark;
		},
	};
}

/** Does the reading of a text; what is wrong with it comes out under the name of where it is from. */
export function parseFrom<T>(named: string, read: () => T, back: () => string = () => ''): T {
	try {
		return read();
	} catch (error) {
		if (!(error instanceof BadSheet)) throw error;
		throw new BadUsage(`${shown(named)} cannot be used as it is; nothing was changed.\n${error.message}${back()}`);
	}
}

/** The text of a sheet; when there is none, what to do instead. */
function readThere(argument: string, place: Place): Read {
	try {
		return readPlace(place);
	} catch (error) {
		if (!(error instanceof FileProblem) || place.kind === 'stdin') throw error;
		if (error.code !== 'ENOENT') {
			error.message += resumeHint(place.path);
			throw error;
		}
		const start = `To start it: swap-audit interview ${quoted(argument)}`;
		if (place.kind === 'path')
			throw new BadUsage(`${shown(place.path)}: there is no such sheet. ${start}${resumeHint(place.path)}`);
		const names = listSheets(dirname(place.path)).map(({ name }) => name);
		const others = names.length > 0 ? ` There are: ${names.join(', ')}.` : '';
		const here = exists(argument) ? ` The file in this folder: ./${argument}.` : '';
		throw new BadUsage(
			`No sheet is named ${shown(argument)} (${shown(place.path)}).${others}${here} ${start}${resumeHint(place.path)}`,
		);
	}
}

/** A word as a shell takes it. */
const quoted = (word: string): string => (/^[\w./-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`);

/** Tells on stderr what looks odd in a sheet. */
export function warnUnusual({ warnings }: Checked): void {
	for (const warning of warnings) printMessage(`Odd: ${writeSheetProblem(warning)}`);
}

/** Where the last good copy of a sheet is, to be said behind what is wrong with it. */
export function resumeHint(path: string): string {
	const advice = lastGoodAdvice(path);
	return advice === null ? '' : `\n${advice}`;
}

/** Somebody else wrote the sheet, or took it away: it was left alone, and ours is in a file beside it, which is open now. */
export class SavedElsewhere extends FileProblem {
	readonly opened: Opened;
	constructor(path: string, found: 'other' | 'gone', opened: Opened & { readonly place: { readonly path: string } }) {
		const what = found === 'gone' ? 'the sheet was taken away' : 'another program wrote the sheet';
		super(path, `${what} meanwhile`, `Yours is kept as ${shown(opened.place.path)}.`);
		this.opened = opened;
	}
}

const openAt = (path: string) => ({ place: { kind: 'path' as const, path }, mark: readWhole(path).mark });

/**
 * A sheet as text of so many bytes at most: audits on record go first, the oldest before the others, so that they never keep
 * an answer from being saved. Longer where it is too long without any.
 */
export function textWithin(most: number, sheet: Sheet): string {
	const text = writeSheet(sheet);
	const dropped = Math.ceil(sheet.audits.length / 2);
	if (Buffer.byteLength(text) <= most || dropped === 0) return text;
	return textWithin(most, { ...sheet, audits: sheet.audits.slice(dropped) });
}

/** Saves a sheet where it was read from; gives it as it is open then. Standard input cannot be saved to: it is left alone. */
export function saveSheet(opened: Opened, sheet: Sheet): Opened {
	const { place, mark } = opened;
	if (place.kind === 'stdin') return { ...opened, sheet };
	const saved = saveWhole(place.path, textWithin(largest, sheet), mark);
	crashContext.path = place.path;
	if (saved.result === 'saved') {
		if (saved.unconfirmed) printMessage(saved.unconfirmed.message);
		return { ...opened, sheet, mark: saved.mark };
	}
	throw new SavedElsewhere(place.path, saved.found, { ...opened, sheet, ...openAt(saved.yours) });
}
