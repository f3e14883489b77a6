import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readNumber, readParts } from '../../src/units/read.ts';
import { shownUnit } from '../../src/units/shown.ts';
import { kinds } from '../../src/units/table.ts';
import { ask, heard, unit } from './ask.ts';

const length = ask('length', 'in');
const gauge = ask('pressure', 'psi');
const absolute = ask('absolute-pressure', 'kPa abs');
const wire = ask('area', 'AWG');

describe('a number as shops type it', () => {
	it.each([
		['3.905', '3.905 in'],
		['35 thou', '35 thou'],
		['0.035"', '0.035 in'],
		['.035', '0.035 in'],
		['3/8 in', '0.375 in'],
		['1-1/2"', '1.5 in'],
		['99 mm', '99 mm'],
		['1\u00a01/2\u00a0in', '1.5 in'],
		['−.005 in', '-0.005 in'],
	])('%s is a length', (text, expected) => {
		expect(heard(text, length)).toBe(expected);
	});

	it.each([
		['14.7 psi', '14.7 psi'],
		['1,5 bar', '1.5 bar'],
		['15 lb', '15 psi'],
		['43.5', '43.5 psi'],
		['-20 inHg', '-20 inHg'],
	])('%s is a pressure', (text, expected) => {
		expect(heard(text, gauge)).toBe(expected);
	});

	it('is kept in the unit of its kind', () => {
		expect(readNumber('1,5 bar', gauge)).toMatchObject({ ok: true, value: 150_000, typed: 1.5 });
		expect(readNumber('95 F', ask('temperature', 'degF'))).toMatchObject({ value: expect.closeTo(308.15, 9) });
		expect(readNumber('87', ask('octane', 'AKI'))).toMatchObject({
			value: 92,
			unit: { assumes: 'fuel.octane_sensitivity' },
		});
		expect(readNumber('85', ask('ratio', '%'))).toMatchObject({ value: 0.85 });
	});

	it('may be of either kind where two are taken', () => {
		const flow = { kinds: ['volume-flow', 'mass-flow'] as const, shown: unit('volume-flow', 'gal/h') };
		expect(heard('190 lph', flow)).toBe('190 L/h');
		expect(heard('300 pph', flow)).toBe('300 lb/h');
		expect(heard('50', flow)).toBe('50 gal/h');
	});
});

describe('what a refusal says to type instead', () => {
	it('names the unit that a bare number has, where it has one', () => {
		expect(heard('much', gauge)).toMatch(/; no unit means psi\.$/);
		expect(heard('much', wire)).toMatch(/; no unit means AWG\.$/);
		expect(heard('much', { kinds: ['pressure'] })).not.toMatch(/no unit/);
	});

	it('says nothing of units where a number is bare by its nature', () => {
		for (const symbol of ['', '1']) {
			const bare = { ...unit('pressure', 'psi'), symbol };
			expect(heard('much', { kinds: ['pressure'], shown: bare }), symbol).not.toMatch(/no unit|;/);
		}
	});

	it('shows a number and its unit that cannot be together as they were typed', () => {
		expect(heard('-300 C', ask('temperature', 'degC'))).toContain('-300 degC');
	});
});

describe('1,500 rpm', () => {
	it('is asked about, with both readings', () => {
		const reading = readNumber('1,500 rpm', ask('rotation', 'rpm'));
		expect(reading).toMatchObject({
			ok: false,
			problem: expect.stringContaining('can mean 1500 rpm or 1.5 rpm'),
			ambiguous: [{ value: 1500 }, { value: 1.5 }],
		});
	});

	it('is no question where the unit is wrong anyway', () => {
		expect(readNumber('1,500 rpm', length)).toEqual({ ok: false, problem: expect.stringContaining('an engine speed') });
	});

	it('is clear with a second group or a point', () => {
		expect(heard('1,234,567', ask('rotation', 'rpm'))).toBe('1234567 rpm');
		expect(heard('1,234.5', ask('rotation', 'rpm'))).toBe('1234.5 rpm');
	});
});

describe('a dash size', () => {
	it.each(['-6', '−6', '6 AN', 'AN6', '6AN', '-6AN', 'AN-6', 'AN 6', '6-an', 'dash 6', '-6 JIC'])(
		'%s is a tube of 3/8 in',
		text => {
			expect(readNumber(text, length)).toMatchObject({
				ok: true,
				value: expect.closeTo(0.375 * 0.0254, 12),
				typed: 6,
				unit: { symbol: 'AN' },
				remark: "-6 is the tube's outside, 3/8 in; measure the bore",
			});
		},
	);

	it('is not meant by a bare minus six where the answer may be negative, or is no length', () => {
		expect(heard('-6', { ...length, signed: true })).toBe('-6 in');
		expect(heard('-6', { kinds: ['length'] })).toContain('has no unit');
		expect(heard('-6', gauge)).toBe('-6 psi');
	});

	it('is not meant by -1, -2, -7 or -6.5', () => {
		for (const text of ['-1', '-2', '-7', '-6.5']) expect(heard(text, length)).toBe(`${text} in`);
	});

	it('that nobody makes is refused', () => {
		for (const text of ['7 AN', '-7AN', '6.5 AN', '0 AN'])
			expect(heard(text, length)).toContain('there is no dash size');
	});
});

describe('a wire size', () => {
	it.each([
		['10', '10 AWG'],
		['10 ga', '10 AWG'],
		['#10', '10 AWG'],
		['AWG 10', '10 AWG'],
		['1/0', '0 AWG'],
		['2/0', '-1 AWG'],
		['00', '-1 AWG'],
		['0000 AWG', '-3 AWG'],
		['4/0 awg', '-3 AWG'],
		['6 mm²', '6 mm2'],
	])('%s is %s', (text, expected) => {
		expect(heard(text, wire)).toBe(expected);
	});

	it('is 2/0 even where square millimetres are shown, but a bare 10 is not', () => {
		const metric = ask('area', 'mm2');
		expect(heard('2/0', metric)).toBe('-1 AWG');
		expect(heard('10', metric)).toBe('10 mm2');
	});

	it('off the scale is refused', () => {
		for (const text of ['41', '10.5 AWG', '-4 AWG', '999999 AWG'])
			expect(heard(text, wire)).toContain('wire gauges are');
	});
});

describe('gauge and absolute', () => {
	it.each([
		['29.4 psia', '14.7 psi'],
		['201.325 kPa abs', '100 kPa'],
		['2 bar(a)', '0.987 bar'],
		['60 kPa absolute', '-41.3 kPa'],
	])('%s is refused as a gauge pressure, and %s is offered', (text, offered) => {
		expect(heard(text, gauge)).toContain(`it is ${offered}: enter that`);
		expect(heard(text, gauge)).toContain('standard atmosphere (101.325 kPa)');
	});

	it('takes a plain kPa or bar as absolute where that is asked', () => {
		expect(readNumber('250', absolute)).toMatchObject({ value: 250_000 });
		for (const text of ['250 kPa', '2.5 bar', '250 kPa abs', '2500 mbar']) {
			expect(readNumber(text, absolute)).toMatchObject({ ok: true, value: expect.closeTo(250_000, 6) });
		}
		expect(readNumber('36.3 psia', absolute)).toMatchObject({ ok: true });
	});

	it.each([
		['30 psi', '44.7 psia'],
		['30 psig', '44.7 psia'],
		['1 kg/cm2', '199 kPa abs'],
	])('%s is refused where absolute is asked, and %s is offered', (text, offered) => {
		expect(heard(text, absolute)).toContain(`it is ${offered}: enter that`);
	});
});

describe('what cannot be read', () => {
	it.each([
		['', 'Nothing was typed'],
		['   ', 'Nothing was typed'],
		['NaN', 'does not begin with a number'],
		['Infinity', 'does not begin with a number'],
		['1e999', 'too large'],
		['1/0', 'too large or not a number'],
		['0/0', 'too large or not a number'],
		['about 3', 'does not begin with a number'],
		['12 foo', '"foo" is no unit known here'],
		['12 psi', '"psi" is for a gauge pressure'],
		['5 -', '"-" is no unit known here'],
		['3 4', 'holds two numbers'],
		['8–10', 'holds two numbers'],
		['1 500 in', 'holds two numbers'],
		['3 in 4 in', 'holds two numbers'],
		['1,5,2', 'is not one number'],
		['10²', '"^2" is no unit known here'],
		['9'.repeat(201), 'too long'],
	])('"%s": %s', (text, problem) => {
		const reading = readNumber(text, length);
		expect(reading).toEqual({ ok: false, problem: expect.stringContaining(problem) });
		expect(!reading.ok && reading.problem).toContain('a length (in, thou, ft, mm, cm, m, AN)');
	});

	it('a second number is no unit, though a ratio has a unit that is called 1', () => {
		for (const text of ['9 1', '9-1', '9 .1']) expect(heard(text, ask('ratio', '1'))).toContain('holds two numbers');
		for (const text of ['9.5:1', '9.5 : 1', '9.5 to 1']) expect(heard(text, ask('ratio', ':1'))).toBe('9.5 :1');
	});

	it('a number that overflows only when converted', () => {
		expect(heard('1e308 psi', gauge)).toContain('too large');
	});
});

describe('a number and its unit from a sheet', () => {
	it('is taken by any spelling', () => {
		expect(readParts(150, 'PSI', gauge)).toMatchObject({ ok: true, typed: 150 });
		expect(readParts(0.8, '1', { kinds: ['ratio'] })).toMatchObject({ ok: true, value: 0.8 });
		expect(readParts(6, 'AN', length)).toMatchObject({ ok: true, remark: expect.any(String) });
	});

	it('needs the unit, unless it is shown or the number is a bare one', () => {
		expect(readParts(150, '', { kinds: ['pressure'] })).toEqual({
			ok: false,
			problem: expect.stringContaining('150 has no unit. This takes a gauge pressure (psi'),
		});
		expect(readParts(0.8, '', { kinds: ['ratio'] })).toMatchObject({ ok: true, unit: { symbol: '1' } });
		expect(readParts(8, '', { kinds: ['count'] })).toMatchObject({ ok: true, unit: { symbol: '' } });
	});

	it('is refused when it is not finite', () => {
		for (const typed of [Number.NaN, Number.POSITIVE_INFINITY]) expect(readParts(typed, 'psi', gauge).ok).toBe(false);
	});

	it('may be of any kind when none is asked', () => {
		expect(readNumber('20 kg/h', {})).toMatchObject({ ok: true, unit: { kind: 'mass-flow' } });
		expect(readNumber('0.85', {})).toMatchObject({ ok: true, unit: { kind: 'ratio' } });
		expect(heard('20 parsec', {})).toContain('This takes a number and its unit.');
	});
});

describe('any text at all', () => {
	it('is read as a finite number or refused in words', () => {
		const alphabet = fc.constantFrom(...'0123456789.,/-+ eE:"\'#½²−\u00a0\u202epsinmAbarCkW%°Ω()'.split(''));
		const text = fc.oneof(fc.string({ unit: alphabet, maxLength: 12 }), fc.string({ unit: 'binary', maxLength: 20 }));
		fc.assert(
			fc.property(text, fc.constantFrom(...kinds), (typed, kind) => {
				const reading = readNumber(typed, { kinds: [kind], shown: shownUnit(kind, 'us') });
				if (reading.ok) expect([reading.value, reading.typed].every(Number.isFinite)).toBe(true);
				else expect(reading.problem.length).toBeGreaterThan(10);
			}),
			{ seed: 3, numRuns: 3000 },
		);
	});
});
