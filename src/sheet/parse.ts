import { firstFault, keysIn, type Place, repeatedKey, sizeOf } from './json-text.ts';
import { BadSheet, shown } from './problem.ts';

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
	const { depth, count, keys } = sizeOf(plain);
	if (depth > deepest) throw bad(`brackets more than ${deepest} deep`, 'a sheet as swap-audit writes it');
	if (count > most) throw bad(`more than ${most} brackets and texts`, 'a sheet as swap-audit writes it');
	const data = jsonOf(plain);
	const repeated = keysIn(data) < keys ? repeatedKey(plain) : null;
	if (repeated)
		throw bad(`${shown(repeated.key)} a second time at ${placeText(repeated.at)}`, 'each key once in its object');
	return data;
}

const bad = (found: string, accepted: string) => new BadSheet([{ path: 'sheet', found, accepted }]);
const placeText = ({ line, column }: Place) => `line ${line}, column ${column}`;

function jsonOf(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		const fault = firstFault(text);
		if (fault?.at === null) throw bad('a file that ends before its JSON does', 'a JSON object, whole');
		const where = fault ? ` at ${placeText(fault.at)}: ${fault.reason}` : '';
		throw bad(`text that is not JSON${where}`, 'a JSON object, whole');
	}
}
