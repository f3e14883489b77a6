import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber } from '../../src/units/read.ts';
import { kinds, unitsOf } from '../../src/units/table.ts';
import { toCanonical } from '../../src/units/unit.ts';
import { write, writeBoth, writeInFull } from '../../src/units/write.ts';
import { unit } from './ask.ts';

const inches = (typed: number) => write(toCanonical(typed, unit('length', 'in')), unit('length', 'in'));

describe('writing a number', () => {
	it('shows three digits, and no zeros at the end', () => {
		expect(write(150_000, unit('pressure', 'psi'))).toBe('21.8 psi');
		expect(write(150_000, unit('pressure', 'bar'))).toBe('1.5 bar');
		expect(write(14.127, unit('voltage', 'V'))).toBe('14.1 V');
		expect(write(0.97234, unit('ratio', '%'))).toBe('97.2 %');
		expect(write(5, unit('voltage', 'V'), 2)).toBe('5 V');
		expect(write(14.127, unit('voltage', 'V'), 4)).toBe('14.13 V');
	});

	it('never rounds whole digits away, and never groups them', () => {
		expect(write(5255, unit('rotation', 'rpm'))).toBe('5255 rpm');
		expect(write(41_369.4, unit('pressure', 'Pa'))).toBe('41369 Pa');
		expect(write(1_234_567, unit('resistance', 'ohm'))).toBe('1234567 ohm');
	});

	it('writes ratios and counts bare, and compression as people say it', () => {
		expect(write(0.8, unit('ratio', '1'))).toBe('0.8');
		expect(write(9.5, unit('ratio', ':1'))).toBe('9.5:1');
		expect(write(8, unit('count', ''))).toBe('8');
	});

	it('writes lengths to the thou, finer only where a thou would hide them', () => {
		expect([0.035, 0.03, 0.0354, 0.0025, 0.0005, 4.005, 3.9, 60.126, 0].map(inches)).toEqual([
			'0.035 in',
			'0.030 in',
			'0.035 in',
			'0.0025 in',
			'0.0005 in',
			'4.005 in',
			'3.9 in',
			'60.13 in',
			'0 in',
		]);
		expect(write(0.00953, unit('length', 'mm'))).toBe('9.53 mm');
		expect(write(0.035 * 0.0254, unit('length', 'mm'))).toBe('0.89 mm');
		expect(write(0.0001, unit('length', 'in'), 1)).toBe('0.004 in');
	});

	it('names wire between two gauges by both, and 2/0 by its name', () => {
		const awg = unit('area', 'AWG');
		expect(write(toCanonical(10, awg), awg)).toBe('10 AWG');
		expect(write(toCanonical(-1, awg), awg)).toBe('2/0 AWG');
		expect(write(6e-6, awg)).toBe('9 to 10 AWG');
		expect(write(60e-6, awg)).toBe('2/0 to 1/0 AWG');
	});

	it('refuses what is not finite', () => {
		for (const kept of [Number.NaN, Number.POSITIVE_INFINITY]) {
			expect(() => write(kept, unit('voltage', 'V'))).toThrow(RangeError);
		}
	});

	it('writes the very small and the very large as powers', () => {
		expect(write(1.234e-9, unit('voltage', 'V'))).toBe('1.23e-9 V');
		expect(write(1.234e22, unit('voltage', 'V'))).toBe('1.23e+22 V');
	});
});

describe('writing for both unit sets', () => {
	it.each([
		['pressure', 'bar', 1.5, '1.5 bar, 21.8 psi'],
		['pressure', 'psi', 43.5, '43.5 psi, 3 bar'],
		['length', 'in', 0.0285, '0.0285 in, 0.72 mm'],
		['length', 'AN', 6, '6 AN, 0.375 in'],
		['volume', 'cu in', 340, '340 cu in, 5.57 L'],
		['temperature', 'degF', 95, '95 degF, 35 degC'],
		['area', 'AWG', -1, '2/0 AWG, 67.4 mm2'],
		['rotation', 'rpm', 5500, '5500 rpm'],
		['octane', 'AKI', 87, '87 AKI, 92 RON'],
		['absolute-pressure', 'kPa abs', 250, '250 kPa abs, 36.3 psia'],
	] as const)('%s in %s', (kind, symbol, typed, expected) => {
		expect(writeBoth(toCanonical(typed, unit(kind, symbol)), unit(kind, symbol))).toBe(expected);
	});

	it('takes the other unit from the question when it names one', () => {
		const [bar, kPa] = [unit('pressure', 'bar'), unit('pressure', 'kPa')];
		expect(writeBoth(150_000, bar, kPa)).toBe('1.5 bar, 150 kPa');
		expect(writeBoth(150_000, bar, bar)).toBe('1.5 bar');
	});
});

describe('what is written', () => {
	it('is read back as the same number in every unit', () => {
		const straight = kinds.flatMap(unitsOf).filter(unit => !unit.write && !unit.refuses);
		fc.assert(
			fc.property(fc.constantFrom(...straight), fc.double({ min: 0.001, max: 1e6, noNaN: true }), (unit, typed) => {
				const full = writeInFull(typed, unit);
				expect(full).toMatch(/^[ -~]+$/);
				const reading = readNumber(full, { kinds: [unit.kind] });
				expect(reading.ok && reading.unit).toBe(unit);
				expect(reading.ok && reading.typed).toBeCloseTo(typed, 5);
				const short = readNumber(write(toCanonical(typed, unit), unit), { kinds: [unit.kind] });
				expect(short.ok && Math.abs(short.typed / typed - 1)).toBeLessThan(0.051);
			}),
			{ seed: 4, numRuns: 500 },
		);
	});
});
