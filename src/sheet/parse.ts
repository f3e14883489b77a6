import { BadSheet, shown } from './problem.ts';
import { repeatedKey, sizeOf } from './tokens.ts';

/** Deeper than any sheet: a file that is only brackets is refused before it is walked. */
const deepest = 40;

/** More brackets and texts than a sheet with hundreds of audits has: what they become takes far more memory than the file. */
const most = 1_500_000;

/**
 * A sheet's text as JSON data. Throws a BadSheet that names line and column of what is not JSON, or of a key that stands
 * twice in one object: a merge can leave that, and one of the two answers would be gone.
 */
export function parseSheet(text: string): unknown {
	const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
	if (plain.trim() === '') throw bad('an empty file', 'a JSON object');
	const { depth, count } = sizeOf(plain);
	if (depth > deepest) throw bad(`brackets more than ${deepest} deep`, 'a sheet as swap-audit writes it');
	if (count > most) throw bad(`more than ${most} brackets and texts`, 'a sheet as swap-audit writes it');
	const data = jsonOf(plain);
	const again = repeatedKey(plain);
	if (again)
		throw bad(`${shown(again.key)} a second time at ${placeIn(plain, again.at)}`, 'each key once in its object');
	return data;
}

const bad = (found: string, accepted: string) => new BadSheet([{ path: 'sheet', found, accepted }]);

function jsonOf(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		throw bad(`text that is no JSON at ${placeIn(text, faultIn(text))}`, 'a JSON object, whole');
	}
}

/** What the engine says against a text; null when it is JSON. */
function complaint(text: string): string | null {
	try {
		JSON.parse(text);
		return null;
	} catch (error) {
		return (error as Error).message;
	}
}

/** Whether a beginning of a text is wrong already, and not just cut short: then the complaint is not about its end. */
function isWrong(beginning: string): boolean {
	const message = complaint(beginning);
	if (message === null || /end of JSON input|Unterminated string/.test(message)) return false;
	const position = /position (\d+)/.exec(message)?.[1];
	return position === undefined || Number(position) < beginning.length;
}

/** Where a text stops being JSON: the end of the shortest beginning that is wrong. Messages often do not say it. */
function faultIn(text: string): number {
	let [fine, wrong] = [0, text.length + 1];
	while (wrong - fine > 1) {
		const middle = (fine + wrong) >> 1;
		if (isWrong(text.slice(0, middle))) wrong = middle;
		else fine = middle;
	}
	return wrong - 1;
}

function placeIn(text: string, at: number): string {
	let [line, begin] = [1, 0];
	for (let end = text.indexOf('\n'); end >= 0 && end < at; end = text.indexOf('\n', begin)) {
		line++;
		begin = end + 1;
	}
	return `line ${line}, column ${at - begin + 1}`;
}
