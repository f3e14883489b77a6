import { expect, test } from 'vitest';
import { smallTable } from '../../src/table/small.ts';

const wanted = [
	{ id: 'pin', headers: ['pin', 'cavity'] },
	{ id: 'circuit', headers: ['circuit'] },
	{ id: 'gauge', headers: ['wire size'], optional: true },
];

test('columns by their headers in any order and spelling, comments and blank lines left out', () => {
	const { rows, problems } = smallTable(
		'\uFEFF# my plug\nCircuit; CAVITY;note;Wire_size\n\nground;1;"a; b";18\r\npump;2;;\n',
		wanted,
	);
	expect(problems).toEqual([]);
	const columns = { circuit: 1, pin: 2, gauge: 4 };
	expect(rows).toEqual([
		{ line: 4, cells: { circuit: 'ground', pin: '1', gauge: '18' }, columns },
		{ line: 5, cells: { circuit: 'pump', pin: '2', gauge: '' }, columns },
	]);
});

test('every row that is not as the header says is reported with its line', () => {
	const { rows, problems } = smallTable('pin,circuit\n1,ground\n2\n3,a,b\n4,d,,\n', wanted);
	expect(rows.map(({ line }) => line)).toEqual([2, 5]);
	expect(problems).toEqual(['line 3: found 1 cells, "2"; accepted: 2', 'line 4: found 3 cells, "3,a,b"; accepted: 2']);
});

test('a column that is missing or there twice is refused', () => {
	expect(() => smallTable('pin,color\n1,red\n', wanted)).toThrow('line 1: found no column circuit');
	expect(() => smallTable('pin,cavity,circuit\n', wanted)).toThrow('line 1, column 2: found 2 columns for pin');
	expect(() => smallTable('\n# nothing\n', wanted)).toThrow('found nothing; accepted: a header line with pin');
});
