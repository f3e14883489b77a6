// The trial of CSV parsers that the choice for src/table rests on: node tests/bench/csv-parsers.mjs [MB]
// What came of it is in README.md beside this file.
import { closeSync, mkdtempSync, openSync, readSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse as csvParse } from 'csv-parse/sync';
import { dsvFormat } from 'd3-dsv';
import Papa from 'papaparse';
import { initParser } from 'udsv';
import { writeTable } from './table.mjs';

const comma = dsvFormat(',');
const columns = names => names.map(name => ({ name, type: 's', repl: {} }));
/** Each parser turns a block of whole lines into rows of texts. */
export const parsers = {
	udsv: width => {
		const cols = columns(Array.from({ length: width }, (_, at) => `c${at}`));
		const parsers = ['', '"'].map(encl =>
			initParser({ skip: 0, col: ',', row: '\n', encl, esc: encl, trim: false, cols }),
		);
		return text => parsers[text.includes('"') ? 1 : 0].stringArrs(text);
	},
	'd3-dsv': () => text => comma.parseRows(text),
	papaparse: () => text => Papa.parse(text, { delimiter: ',', newline: '\n' }).data,
	'csv-parse': () => text => csvParse(text, { relax_column_count: true }),
};

/** Hostile lines between two good ones of three cells: `good` when the good ones come out as they are. */
const hostile = {
	'short line': '1,2',
	'long line': '1,2,3,4',
	comment: '# stop, and go',
	'open quote': '1,"2,3',
	'quote in a cell': '1,2"x,3',
	'text behind a quote': '1,"2"x,3',
	'NUL bytes': '1,\0\0,3',
};

export function timeOf(parse, path, width) {
	const size = 256 * 1024;
	const bytes = Buffer.allocUnsafe(2 * size);
	const numbers = Array.from({ length: width }, () => new Float64Array(size));
	const file = openSync(path, 'r');
	let have = 0;
	const start = performance.now();
	for (;;) {
		const count = readSync(file, bytes, have, size, null);
		const end = count === 0 ? have : bytes.lastIndexOf(10, have + count - 1) + 1;
		for (const [at, row] of parse(bytes.latin1Slice(0, end)).entries()) {
			for (let column = 0; column < width; column++) numbers[column][at] = +row[column];
		}
		if (count === 0) break;
		bytes.copyWithin(0, end, have + count);
		have = have + count - end;
	}
	closeSync(file);
	return (performance.now() - start) / 1000;
}

if (process.argv[1] === import.meta.filename) {
	const folder = mkdtempSync(join(tmpdir(), 'csv-parsers-'));
	const path = join(folder, 'table.csv');
	writeTable(path, Number(process.argv[2] ?? 20));
	for (const [name, make] of Object.entries(parsers)) {
		const lost = Object.entries(hostile).filter(([, line]) => {
			try {
				const rows = make(3)(`1,2,3\n${line}\n4,5,6\n`).map(row => row.join());
				return !rows.includes('1,2,3') || !rows.includes('4,5,6');
			} catch {
				return true;
			}
		});
		console.log(
			`${name.padEnd(10)} ${timeOf(make(12), path, 12).toFixed(2)} s; loses its neighbors: ${lost.map(([what]) => what).join(', ') || 'none'}`,
		);
	}
	rmSync(folder, { recursive: true });
}
