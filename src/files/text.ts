import { isUtf8 } from 'node:buffer';
import { FileProblem } from './problem.ts';

const remedy = 'Open it in an editor and save it again as plain text in UTF-8.';

/**
 * The text of a file's bytes. A byte order mark of UTF-8 is dropped.
 *
 * @throws FileProblem for UTF-16, a zero byte and anything that is not UTF-8, with the place of the first bad byte.
 */
export function decode(path: string, bytes: Buffer): string {
	const [first, second] = bytes;
	if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
		throw new FileProblem(path, 'this is UTF-16 text', remedy);
	}
	const zero = bytes.indexOf(0);
	if (zero >= 0) throw new FileProblem(path, `a zero byte${place(bytes, zero)}: this is not plain text`, remedy);
	if (!isUtf8(bytes)) {
		throw new FileProblem(path, `bytes that are not UTF-8${place(bytes, firstBad(bytes))}`, remedy);
	}
	const text = bytes.toString('utf8');
	return text.startsWith('\ufeff') ? text.slice(1) : text;
}

/** Counts as editors do for the line, as tools do for the byte: the first line is 1, the first byte is 0. */
function place(bytes: Buffer, at: number): string {
	let line = 1;
	for (let i = bytes.indexOf(10); i >= 0 && i < at; i = bytes.indexOf(10, i + 1)) line++;
	return ` at byte ${at} (line ${line})`;
}

/** Where the first sequence that is not UTF-8 begins. */
function firstBad(bytes: Buffer): number {
	const repaired = Buffer.from(bytes.toString('utf8'));
	let at = 0;
	while (bytes[at] === repaired[at]) at++;
	// A sequence cut short may agree with the replacement character for a byte or two: step back to its start.
	while (!isUtf8(bytes.subarray(0, at))) at--;
	return at;
}
