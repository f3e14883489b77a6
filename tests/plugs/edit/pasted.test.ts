import { describe, expect, test } from 'vitest';
import { pinsOf, startEdit } from '../../../src/plugs/edit/edit.ts';
import { readPasted, readPinLine } from '../../../src/plugs/edit/pasted.ts';
import { paste } from '../../../src/plugs/edit/rows.ts';

describe('a line of a pin', () => {
	test.each([
		['14 green/white coolant temperature', { pin: '14', wire: 'green/white', circuit: 'coolant temperature' }],
		['14: GN/WH ECT', { pin: '14', wire: 'GN/WH', circuit: 'ECT' }],
		['A7 lt blue/black injector 3', { pin: 'A7', wire: 'lt blue/black', circuit: 'injector 3' }],
		['14 green with white stripe ECT', { pin: '14', wire: 'green with white stripe', circuit: 'ECT' }],
		['3 black chassis ground 14 AWG', { pin: '3', wire: 'black', circuit: 'chassis ground', gauge: 14 }],
		['3 red B+ 2.5 mm2', { pin: '3', wire: 'red', circuit: 'B+', gauge: '2.5 mm2' }],
		['12 ECT', { pin: '12', circuit: 'ECT' }],
		['12 red', { pin: '12', wire: 'red' }],
		['12', { pin: '12' }],
		['5 - 5 V reference', { pin: '5', circuit: '5 V reference' }],
		['14, green/white, ECT', { pin: '14', wire: 'green/white', circuit: 'ECT' }],
		['14; ; ECT; 18', { pin: '14', circuit: 'ECT', gauge: 18 }],
		['14\tgreen\tECT\t18\tcut\tback', { pin: '14', wire: 'green', circuit: 'ECT', gauge: 18, note: 'cut, back' }],
		['| 14 | green | ECT |', { pin: '14', wire: 'green', circuit: 'ECT' }],
		['14,ECT', { pin: '14', circuit: 'ECT' }],
		['14,gray', { pin: '14', wire: 'gray' }],
		['14 green, coolant temp', { pin: '14', wire: 'green', circuit: 'coolant temp' }],
		['9 empty', { pin: '9', circuit: 'empty' }],
		['31 brown spare', { pin: '31', wire: 'brown', circuit: 'spare' }],
		['6 red and crank feed', { pin: '6', wire: 'red', circuit: 'and crank feed' }],
	])('%s', (line, pin) => {
		expect(readPinLine(line)).toEqual(pin);
	});
});

describe('a pasted table', () => {
	const notes = '# left plug\n\n14 green/white ECT\n15 red B+\n';

	test('with headers, in any order of columns; without; and as notes', () => {
		const pins = [
			{ pin: '14', wire: 'green/white', circuit: 'ECT' },
			{ pin: '15', wire: 'red', circuit: 'B+' },
		];
		expect(readPasted('Circuit\tPin\tWire\nECT\t14\tgreen/white\nB+\t15\tred')).toEqual({ pins });
		expect(readPasted('14\tgreen/white\tECT\r\n15\tred\tB+\r\n')).toEqual({ pins });
		expect(readPasted(notes)).toEqual({ pins });
	});

	test('is taken whole or not at all, and says which line it is', () => {
		expect(readPasted('pin,wire,circuit,gauge\n1,red,B+,thick\n')).toEqual({
			problem: expect.stringMatching(/line 2, column 4/),
		});
		expect(readPasted(`1 red B+\n${'x'.repeat(201)} red B+`)).toEqual({
			problem: expect.stringMatching(/200 characters|like "14"/),
		});
	});

	const start = startEdit([
		{
			plug: 'dash',
			half: 'engine',
			pins: [{ pin: '14', circuit: 'ECT', joined: true }, { pin: '15' }, { pin: '16', circuit: 'MIL' }],
		},
	]);

	test('fills the rows of its pins, adds the others behind, and leaves the rest', () => {
		const after = paste(start, '14 green ECT\n15 red B+\n20 tan MAP');
		expect(pinsOf(after)).toEqual([
			{ pin: '14', circuit: 'ECT', joined: true, wire: 'green' },
			{ pin: '15', wire: 'red', circuit: 'B+' },
			{ pin: '16', circuit: 'MIL' },
			{ pin: '20', wire: 'tan', circuit: 'MAP' },
		]);
		expect(after.said?.text).toBe('3 pins: 1 new, 2 that were there.');
	});

	test('keeps a pin that stands twice in it twice', () => {
		const after = paste(start, '15 red B+\n15 blue MIL');
		expect(pinsOf(after).filter(({ pin }) => pin === '15').length).toBe(2);
	});

	test('of one column goes down from the cursor; one that does not fit is refused whole', () => {
		const circuits = { ...start, column: 'circuit' as const, row: 1 };
		expect(pinsOf(paste(circuits, 'B+\nMAP')).map(({ circuit }) => circuit)).toEqual(['ECT', 'B+', 'MAP']);
		const over = paste(circuits, 'B+\nMAP\nIAT');
		expect(over.halves).toBe(start.halves);
		expect(over.said?.text).toMatch(/3 lines, 2 pins from here on/);
	});
});
