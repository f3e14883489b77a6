import { describe, expect, test } from 'vitest';
import { numbers, open, read } from './support.ts';

const nan = Number.NaN;
const simple = [
	[0, 800, 1.5],
	[0.1, 810, 2.25],
	[0.2, 820, -3],
];

describe('how a table is laid out', () => {
	for (const [name, delimiter] of [
		['commas', ','],
		['semicolons', ';'],
		['tabs', '\t'],
		['bars', '|'],
	] as const) {
		for (const end of ['\n', '\r\n', '\r']) {
			test(`${name}, line ends ${JSON.stringify(end)}`, async () => {
				const lines = [['Time', 'RPM', 'x'], ...simple].map(row => row.join(delimiter));
				for (const last of ['', end]) {
					const found = await read(lines.join(end) + last);
					expect(found.delimiter).toBe(delimiter);
					expect(found.rows).toEqual(simple);
					expect(found.counts).toEqual({ rows: 3, unread: 0, faults: [] });
				}
			});
		}
	}

	test('decimal commas are told apart by the whole of it: whole numbers first, one decimal at the end', async () => {
		const body = Array.from({ length: 3000 }, (_, at) => `${at};800`).join('\n');
		const found = await read(`t;n\n${body}\n3000,5;801\n`);
		expect(found.rows.at(-1)).toEqual([3000.5, 801]);
		const late = await read(`t;n\n${'1;80000000000\n'.repeat(90_000)}3000,5;801\n`);
		expect(late.rows.at(-1)).toEqual([3000.5, 801]);
	});

	test('1,500 is a thousand and a half beside points, one and a half beside commas', async () => {
		expect((await read('t;n\n0.5;1,500\n1.5;2,500\n')).rows).toEqual([
			[0.5, 1500],
			[1.5, 2500],
		]);
		expect((await read('t;n\n0,5;1,500\n1,5;2.500,5\n')).rows).toEqual([
			[0.5, 1.5],
			[1.5, 2500.5],
		]);
	});

	test('quotes: delimiters, line breaks and quotes in cells; decimal commas between commas', async () => {
		const found = await read('"Time, s","Engine\nspeed","say ""x"""\n"0,5","1,25","2"\n"1,5","3","4,75"\n');
		expect(found.columns.map(({ header }) => header)).toEqual(['Time, s', 'Engine\nspeed', 'say "x"']);
		expect(found.rows).toEqual([
			[0.5, 1.25, 2],
			[1.5, 3, 4.75],
		]);
	});

	test('encodings: UTF-8, UTF-16 either way round, with and without a mark, and Latin-1', async () => {
		const text = 'Zeit;Kühlwasser [°C]\n0;80\n1;81\n';
		const wide = new Uint16Array([...text].map(sign => sign.charCodeAt(0)));
		const little = new Uint8Array(wide.buffer);
		const big = little.map((_, at) => little[at ^ 1]!);
		const marked = (mark: number[], bytes: Uint8Array) => Uint8Array.from([...mark, ...bytes]);
		const utf8 = new TextEncoder().encode(text);
		const all = {
			utf8,
			'utf8 marked': marked([0xef, 0xbb, 0xbf], utf8),
			little,
			'little marked': marked([0xff, 0xfe], little),
			big,
			'big marked': marked([0xfe, 0xff], big),
			latin1: Uint8Array.from(text, sign => sign.charCodeAt(0)),
		};
		for (const [name, bytes] of Object.entries(all)) {
			const found = await read(bytes);
			expect(
				found.columns.map(({ header }) => header),
				name,
			).toEqual(['Zeit', 'Kühlwasser [°C]']);
			expect(found.columns[1]!.unit, name).toBe('°C');
			expect(found.rows, name).toEqual([
				[0, 80],
				[1, 81],
			]);
		}
	});

	test('lines before the header, a line of units, units in the header in every way', async () => {
		const found = await read('Recorded in the yard\nday;one;two\n\nTime;Speed;Boost\ns;km/h;psi\n0;1;2\n1;2;3\n');
		expect(found.columns.map(({ name, unit }) => [name, unit])).toEqual([
			['Time', 's'],
			['Speed', 'km/h'],
			['Boost', 'psi'],
		]);
		expect(found.rows).toHaveLength(2);
		const headers = 'A [psi];B (psi);C, psi;D/psi;E - psi;F (odd);G';
		const units = (await read(`${headers}\n1;2;3;4;5;6;7\n`)).columns.map(({ name, unit }) => `${name}|${unit}`);
		expect(units).toEqual(['A|psi', 'B|psi', 'C|psi', 'D|psi', 'E|psi', 'F (odd)|null', 'G|null']);
	});

	test('no header at all: columns are named by their place', async () => {
		const found = await read('0,1\n1,2\n');
		expect(found.columns.map(({ header }) => header)).toEqual(['column 1', 'column 2']);
		expect(found.rows).toHaveLength(2);
	});

	test('a long table comes out wide, readings of one instant in one row', async () => {
		const text = 'Time;Name;Value;Unit\n0;RPM;800;rpm\n0;Boost;1,5;psi\n0,1;RPM;810;rpm\n0,2;Boost;2,5;psi\n';
		const found = await read(text);
		expect(found.columns.map(({ header }) => header)).toEqual(['Time', 'RPM [rpm]', 'Boost [psi]']);
		expect(found.rows).toEqual([
			[0, 800, 1.5],
			[0.1, 810, nan],
			[0.2, nan, 2.5],
		]);
	});
});

describe('cells and lines', () => {
	test('cells without a reading, signs, exponents, spaces', async () => {
		const found = await read('t,n\n0,\n1,-\n2,NaN\n3,null\n4,n/a\n5, 7 \n6,+7\n7,1.5e3\n8,-.5\n9,5.\n');
		expect(found.rows.map(([, value]) => value)).toEqual([nan, nan, nan, nan, nan, 7, 7, 1500, -0.5, 5]);
		expect(found.counts.unread).toBe(0);
	});

	test('empty trailing columns, with and without their delimiters', async () => {
		expect((await read('t,n,\n0,1,\n1,2,\n')).columns).toHaveLength(2);
		expect((await read('t,n\n0,1,,\n1,2,,\n2,3,,\n')).rows).toHaveLength(3);
	});

	test('headers, units, comments and blank lines in the middle are no rows and no faults', async () => {
		const found = await read('t,n\ns,rpm\n0,1\n\n# a stop\nt,n\ns,rpm\n1,2\n// more\n2,3\n');
		expect(found.counts).toEqual({ rows: 3, unread: 0, faults: [] });
	});

	test('what cannot be read is counted, the first three reported with line and column, the rest of its line kept', async () => {
		const found = await read('t,n\n0,1\n1,x\n2,1e999\n3,0x10\n4,9,9\n5\n6,"7\n7,8\n');
		expect(found.counts.rows).toBe(5);
		expect(found.counts.unread).toBe(6);
		expect(found.counts.faults).toEqual([
			'line 3, column 2: found "x"',
			'line 4, column 2: found "1e999"',
			'line 5, column 2: found "0x10"',
		]);
		expect(found.rows.at(-1)).toEqual([7, 8]);
	});

	test('a file cut in the middle of its last line loses that line alone, and says so', async () => {
		const found = await read('t,n,m\n0,1,2\n1,2,3\n2,1');
		expect(found.rows).toHaveLength(2);
		expect(found.counts.faults).toEqual(['line 4, column 2: found a line of 2 of 3 cells, "2,1"']);
	});

	test('clocks in seconds; functions read what is no number', async () => {
		const found = await read('t,n\n21:06:06.069,On\n21:06:07.5,Off\n6:06.25,On\n', [
			'clock',
			cell => (cell === 'On' ? 1 : 0),
		]);
		expect(found.rows).toEqual([
			[75966.069, 1],
			[75967.5, 0],
			[366.25, 1],
		]);
	});

	test('pieces may end anywhere', async () => {
		const text = 'time,"a b",n\r\n0.125,"1",3\r\n1.5,2,"4"\r\n2.5,,5\r\n';
		const whole = await numbers(await open(text, 10_000));
		for (let size = 1; size < 12; size++) expect(await numbers(await open(text, size))).toEqual(whole);
	});
});
