import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { PlugHalf } from '../../src/sheet/plugs.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';

const table = 'Pin;Wire;Circuit;Gauge\n14;green/white;ECT;0,75 mm2\nA7;red;B+;10\n';

/** A sheet in a folder of its own, and tables beside it to read in. */
function shop(plugs?: readonly PlugHalf[]) {
	const home = temporaryFolder();
	const sheet = join(home, 'mule.json');
	const before = writeSheet({ ...buildSheet('boosted'), ...(plugs ? { plugs } : {}) });
	writeFileSync(sheet, before);
	const read = (bytes: string | Uint8Array, ...flags: readonly string[]) => {
		const file = join(home, 'table.csv');
		writeFileSync(file, bytes);
		return runCommand(['pins', sheet, '--read', file, '--plug', 'dash', '--half', 'engine', ...flags], { home });
	};
	return { read, before, now: () => JSON.parse(readFileSync(sheet, 'utf8')) };
}

const pins = [
	{ pin: '14', wire: 'green/white', circuit: 'ECT', gauge: '0.75 mm2' },
	{ pin: 'A7', wire: 'red', circuit: 'B+', gauge: 10 },
];
const wide = (text: string) => new Uint8Array([0xff, 0xfe, ...Buffer.from(text, 'utf16le')]);

describe('pins --read', () => {
	test.each([
		['UTF-16 with its mark, semicolons', wide(table)],
		[
			'Windows-1252, tabs, lines ended as on Windows',
			Buffer.from(table.replaceAll(';', '\t').replaceAll('\n', '\r\n').replace('mm2', 'mm\u00b2'), 'latin1'),
		],
	])('takes a table in %s, and changes nothing else', (_, bytes) => {
		const { read, before, now } = shop();
		const { status, err, out } = read(bytes, '--mates', 'body', '--from', '1998 wagon loom');
		expect({ status, out }).toEqual({ status: 0, out: '' });
		expect(err).toContain(
			"dash, the engine's half: 2 pins, 2 changed\n  + 14: green/white, ECT, 0.75 mm2\n  + A7: red, B+, 10",
		);
		const { plugs, ...rest } = now();
		expect(plugs).toEqual([{ plug: 'dash', half: 'engine', mates: 'body', from: '1998 wagon loom', pins }]);
		expect(rest).toEqual(JSON.parse(before));
	});

	test('says what changes before it replaces a half: new, gone, other; what is known beyond the table stays with its pin', () => {
		const { read, now } = shop([
			{
				plug: 'Dash',
				half: 'engine',
				view: 'wires',
				pins: [
					{ pin: '14', circuit: 'ECT', joined: true },
					{ pin: '15', circuit: 'tachometer' },
					{ pin: '16', circuit: 'spare' },
				],
			},
			{ plug: 'dash', half: 'car', pins: [] },
		]);
		const { err } = read('cavity,color,function\n14,,ECT\n15,white,MIL\n17,,colant temperature\n');
		expect(err).toContain(
			[
				'3 pins, 3 changed',
				'  ~ 15: tachometer -> white, MIL',
				'  - 16: spare',
				'  + 17: colant temperature',
				'  ? 17: "colant temperature" is not recognized; nearest: coolant temperature signal',
			].join('\n'),
		);
		expect(now().plugs[0]).toEqual({
			plug: 'dash',
			half: 'engine',
			view: 'wires',
			pins: [
				{ pin: '14', circuit: 'ECT', joined: true },
				{ pin: '15', wire: 'white', circuit: 'MIL' },
				{ pin: '17', circuit: 'colant temperature' },
			],
		});
		expect(now().plugs.length).toBe(2);
	});

	test('a table with faults is refused whole: each with its line and column, status 2, the sheet as it was', () => {
		const { read, before, now } = shop();
		const { status, err } = read(`pin,wire,circuit,gauge\n1,red,B+,thick\n,red,B+,18\n3,red\n4,,${'x'.repeat(201)},\n`);
		expect(status).toBe(2);
		expect(err).toMatch(/nothing was changed/);
		for (const place of ['line 2, column 4', 'line 3, column 1', 'line 4', 'line 5, column 3'])
			expect(err).toContain(place);
		expect(now()).toEqual(JSON.parse(before));
	});

	test('a table that no sheet could hold is refused too', () => {
		const { read, before, now } = shop();
		const rows = Array.from({ length: 501 }, (_, at) => `${at},,ECT`).join('\n');
		const { status, err } = read(`pin,wire,circuit\n${rows}\n`);
		expect(status).toBe(2);
		expect(err).toContain('at most 500');
		expect(now()).toEqual(JSON.parse(before));
	});
});
