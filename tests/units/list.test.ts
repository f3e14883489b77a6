import { describe, expect, it } from 'vitest';
import { readList, readPairs } from '../../src/units/list.ts';
import { ask } from './ask.ts';

const psi = ask('pressure', 'psi');
const curve = [ask('voltage', 'V'), ask('mass-flow', 'kg/h')] as const;

describe('a list', () => {
	it.each([
		['150 152 - 149', [150, 152, null, 149], 'psi'],
		['150,152,-,149', [150, 152, null, 149], 'psi'],
		['150, 152, –, 149 psi', [150, 152, null, 149], 'psi'],
		['150 ; 152;149', [150, 152, 149], 'psi'],
		['150\n152\t149', [150, 152, 149], 'psi'],
		['150,152,149psi', [150, 152, 149], 'psi'],
		['10,5 10,6 bar', [10.5, 10.6], 'bar'],
		['10.5bar 10.6', [10.5, 10.6], 'bar'],
		['10.5 bar, 10.6 bar', [10.5, 10.6], 'bar'],
		['- 1000 kPa', [null, 1000], 'kPa'],
		['150 152 lb / sq in', [150, 152], 'psi'],
		['150 152,', [150, 152], 'psi'],
		['150', [150], 'psi'],
	])('%s is read', (text, typed, symbol) => {
		expect(readList(text, psi)).toMatchObject({ ok: true, typed, unit: { symbol } });
	});

	it('is kept in the unit of its kind', () => {
		expect(readList('1 - 2 bar', psi)).toMatchObject({ values: [100_000, null, 200_000] });
	});

	it.each([
		['', 'does not begin with a number'],
		['- -', 'does not begin with a number'],
		['150,,149', 'does not begin with a number'],
		['psi 150', '"psi" does not begin with a number'],
		['150 psi 10 bar', 'psi and bar stand in one list'],
		['150 152 furlong', '"furlong" is no unit known here'],
		['150 152 rpm', 'is for an engine speed'],
		['1,500 152', 'can mean 1500 psi or 1.5 psi'],
		['150-152 149', 'holds two numbers'],
		['1 1e999', 'too large'],
	])('"%s" is refused: %s', (text, problem) => {
		expect(readList(text, psi)).toMatchObject({ ok: false, problem: expect.stringContaining(problem) });
	});
});

describe('pairs', () => {
	const typed = [
		[0.6, 15],
		[1.5, 90],
	];

	it.each([
		'0.6 15, 1.5 90',
		'0.6 15,1.5 90',
		'0.6 15; 1.5 90',
		'0,6 15; 1,5 90',
		'0,6 15, 1,5 90',
		'0.6\t15\n1.5\t90\n',
		'0.6\t15\r\n\r\n1.5\t90',
		'0,6\t15\n1,5\t90',
		'0.6,15\n1.5,90',
		'0.6, 15\n1.5, 90',
		'0.6 V 15 kg/h, 1.5 90',
		'0.6V 15kg/h\n1.5V 90kg/h',
		'0.6 15, 1.5 90,',
	])('"%s" are two', text => {
		expect(readPairs(text, curve)).toMatchObject({ ok: true, typed, units: [{ symbol: 'V' }, { symbol: 'kg/h' }] });
	});

	it('are kept each in its own kind', () => {
		expect(readPairs('600 mV 36 kg/h, 1500 72', curve)).toMatchObject({
			values: [
				[expect.closeTo(0.6, 12), expect.closeTo(0.01, 12)],
				[expect.closeTo(1.5, 12), expect.closeTo(0.02, 12)],
			],
		});
	});

	it.each([
		['', 'Nothing was typed'],
		['0.6', '"0.6" is not a pair'],
		['0.6 15 3, 1 2', '"0.6 15 3" is not a pair'],
		['0.6 -, 1 2', 'is not a pair'],
		['volts flow\n1 2', '"volts flow" is not a pair'],
		['1,5 2,6', 'is not a pair'],
		['0.6 V 15, 1.5 A 90', '"A" is for a current'],
		['0.6 15,1.5 1,100', 'is not a pair'],
		['0.6 15, 1.5 1,100', 'can mean 1100 kg/h or 1.1 kg/h'],
		['0.6 15; 1.5 1,100', 'can mean 1100 kg/h or 1.1 kg/h'],
	])('"%s" are refused: %s', (text, problem) => {
		expect(readPairs(text, curve)).toMatchObject({ ok: false, problem: expect.stringContaining(problem) });
	});
});

describe('a very long answer', () => {
	it('is refused unread past a page; up to it, it is read or refused in a short line', () => {
		expect(readList('1 '.repeat(20_000), psi)).toMatchObject({
			ok: false,
			problem: expect.stringContaining('too long'),
		});
		expect(readPairs('1 2, '.repeat(5_000), curve)).toMatchObject({
			ok: false,
			problem: expect.stringContaining('too long'),
		});
		const worst = [
			'1 '.repeat(9_999),
			'1,'.repeat(9_999),
			' '.repeat(19_999),
			`1${' a'.repeat(9_999)}`,
			'1'.repeat(19_999),
		];
		const readings = worst.map(text => readList(text, psi));
		expect(readings.map(reading => (reading.ok ? reading.values.length : 'refused'))).toEqual([
			9_999,
			9_999,
			'refused',
			'refused',
			'refused',
		]);
		for (const reading of readings) if (!reading.ok) expect(reading.problem.length).toBeLessThan(400);
	});
});
