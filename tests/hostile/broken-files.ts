import { readFileSync } from 'node:fs';

/** Every question answered, as a hand once wrote it, with an audit and a key of another program. */
export const full = readFileSync(new URL('../history/version-1-full.json', import.meta.url), 'utf8');

const top = '{"format": "swap-audit/sheet", "version": 1, "name": "x", "units": "us", ';
const megabytes = (count: number, unit: string) => unit.repeat(Math.ceil((count * 2 ** 20) / unit.length));

/** A sheet of so many MB that has the looks of one: answer after answer in a section that there is. */
const answers = (count: number): string => {
	const rows: string[] = [];
	for (let at = 0, size = 0; size < count * 2 ** 20; at++) {
		const row = `"bore_${at}": {"value": ${at}, "unit": "in", "known": "measured"}`;
		rows.push(row);
		size += row.length + 1;
	}
	return `${top}"answers": {"engine": {${rows.join(',')}}}}`;
};

/** Files that no program can take for a sheet, each with what makes its bytes. */
export const brokenFiles: readonly (readonly [what: string, make: () => string | Buffer])[] = [
	['an empty file', () => ''],
	['a file of spaces', () => ' \n\t \n'],
	['a mark of byte order alone', () => '\ufeff'],
	['UTF-16, the low byte first', () => Buffer.from(`\ufeff${full}`, 'utf16le')],
	['UTF-16, the high byte first', () => Buffer.from(`\ufeff${full}`, 'utf16le').swap16()],
	['UTF-16 without a mark', () => Buffer.from(full, 'utf16le')],
	['zero bytes all through, as a lost disk block leaves them', () => Buffer.alloc(full.length)],
	['zero bytes at the end', () => Buffer.concat([Buffer.from(full.slice(0, -100)), Buffer.alloc(100)])],
	['one zero byte in a name', () => full.replace('"name": "', '"name": "\0')],
	['half a character at the end', () => Buffer.concat([Buffer.from(full), Buffer.from([0xe2, 0x82])])],
	[
		'half a surrogate as bytes',
		() => Buffer.concat([Buffer.from('{"name": "'), Buffer.from([0xed, 0xa0, 0x80, 0x22, 0x7d])]),
	],
	['Latin letters of one byte', () => Buffer.from(full.replace('"name": "', '"name": "\u00e4'), 'latin1')],
	['JSON of a list', () => `[${full}]`],
	['two sheets one after the other', () => full + full],
	['the marks of a merge', () => full.replace(/\n(?=\t\t"engine")/, '\n<<<<<<< ours\n')],
	['a comment', () => full.replace('{', '{ // mine\n')],
	['lists 10,000 deep', () => `${top}"answers": ${'['.repeat(10_000)}${']'.repeat(10_000)}}`],
	['objects 10,000 deep', () => `${top}"answers": ${'{"a":'.repeat(10_000)}1${'}'.repeat(10_000)}}`],
	['brackets 10,000 deep and never closed', () => '['.repeat(10_000)],
	['a pasted web page', () => '<!doctype html>\n<title>not found</title>\n'],
];

/** The same, of a size that no sheet has. Files above 16 MB are not read to their end; those below it are. */
export const bigFiles: typeof brokenFiles = [
	['50 MB of answers', () => answers(50)],
	['15 MB of answers', () => answers(15)],
	['50 MB of one text', () => `${top}"name": "${megabytes(50, 'x')}"}`],
	['15 MB of sections', () => `${top}"answers": {${Array.from({ length: 1e6 }, (_, at) => `"s${at}":{}`).join(',')}}}`],
	[
		'15 MB of empty lists in an answer',
		() => `${top}"answers": {"engine": {"bore": {"value": [${megabytes(15, '[],')}[]]}}}}`,
	],
	['50 MB of brackets', () => megabytes(50, '[')],
	['15 MB of keys of the top, all alike', () => `${top}${megabytes(15, '"a":1,')}"b":1}`],
	['15 MB of one text that is no name', () => `${top}"answers": "${megabytes(15, 'x')}"}`],
	['15 MB of a text never closed', () => `${top}"note": "${megabytes(15, 'x')}`],
	['15 MB of line ends, then a fault', () => `{${megabytes(15, '\n')}]`],
	['15 MB of numbers too large', () => `${top}"extra": [${megabytes(15, '1e999,')}1], "answers": {}}`],
	['15 MB of audits that are none', () => `${top}"answers": {}, "audits": [${megabytes(15, '{},')}{}]}`],
];
