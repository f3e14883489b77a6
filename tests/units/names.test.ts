import { describe, expect, it } from 'vitest';
import { canonicalUnits } from '../../src/units/kinds.ts';
import { partnerOf, unitNamed } from '../../src/units/names.ts';
import { spellingKey } from '../../src/units/spelling.ts';
import { kinds, unitsOf } from '../../src/units/table.ts';
import { toCanonical } from '../../src/units/unit.ts';
import { heard } from './ask.ts';

const units = kinds.flatMap(unitsOf);
const spellings = units.flatMap(unit => [unit.symbol, ...unit.also].map(name => [unit.kind, name, unit] as const));

describe('the table of units', () => {
	it.each(kinds)('keeps %s in a unit of its own that converts to itself', kind => {
		const unit = unitNamed(canonicalUnits[kind], [kind]);
		expect(unit?.symbol).toBe(canonicalUnits[kind]);
		expect(toCanonical(7, unit!)).toBe(7);
	});

	it('names no unit twice within a kind', () => {
		for (const kind of kinds) {
			const owners = new Map<string, string>();
			for (const unit of unitsOf(kind)) {
				for (const name of [unit.symbol, ...unit.also]) {
					expect(owners.get(spellingKey(name)) ?? unit.symbol, `${name} of ${kind}`).toBe(unit.symbol);
					owners.set(spellingKey(name), unit.symbol);
				}
			}
		}
	});

	it('writes every unit in plain ASCII', () => {
		for (const { symbol } of units) expect(symbol).toMatch(/^[ -~]*$/);
	});

	it('pairs units with units of their own kind only', () => {
		for (const unit of units.filter(({ partner }) => partner !== undefined)) {
			expect(partnerOf(unit)?.symbol, unit.symbol).toBe(unit.partner);
			expect(partnerOf(unit)).not.toBe(unit);
		}
	});

	it('has every unit that the interview and the contract name', () => {
		const named = [
			'in ft cu_in cc psi degF % deg rpm hp mA V ohm lb/h gal/h kg/h lb/min A Ah AWG mm2 ms lb-ft lbf oz-in AKI RON',
			'pulses/mi kPa kPa_abs psia 1 :1 mm m L bar degC kW N_m N kg/s g/s L/h m/s g-cm m3 m2 Pa W K s days J/kg kg/m3',
		].flatMap(line => line.split(' ').map(name => name.replace('_', ' ')));
		for (const name of named) expect(unitNamed(name)?.symbol, name).toBe(name);
	});
});

describe('a spelling', () => {
	it.each(spellings.filter(([, name]) => name !== '' && name !== '1'))(
		'of %s, %s, is read as its unit',
		(kind, name, unit) => {
			const glued = /^\d/.test(name) ? [] : [`8${name}`];
			for (const text of [
				...glued,
				`8 ${name}`,
				`8 ${name.toUpperCase()}`,
				`8 ${name.toLowerCase()}`,
				` 8  ${name} `,
			]) {
				expect(heard(text, { kinds: [kind] })).toBe(`8 ${unit.symbol}`);
			}
		},
	);

	it('does not mind case, points, hyphens, brackets, raised digits and signs', () => {
		const same: [string, string][] = [
			['CU. IN.', 'cu in'],
			['in³', 'cu in'],
			['in^3', 'cu in'],
			['㏄', 'cc'],
			['ft.-lbs.', 'lb-ft'],
			['N·m', 'N m'],
			['N*m', 'N m'],
			['kΩ', 'kohm'],
			['k-ohm', 'kohm'],
			['Ω', 'ohm'],
			['µs', 'us'],
			['°F', 'degF'],
			['℃', 'degC'],
			['kPa (abs)', 'kPa abs'],
			['psi(a)', 'psia'],
			['″', 'in'],
			['”', 'in'],
			['′', 'ft'],
			['lbs per hour', 'lb/h'],
			['mm²', 'mm2'],
			['pulses per mile', 'pulses/mi'],
		];
		for (const [spelling, symbol] of same) expect(unitNamed(spelling)?.symbol, spelling).toBe(symbol);
	});

	it('means what its kind makes of it', () => {
		expect(unitNamed('C', ['temperature'])?.symbol).toBe('degC');
		expect(unitNamed('C', ['charge'])?.symbol).toBe('C');
		expect(unitNamed('F', ['temperature'])?.symbol).toBe('degF');
		expect(unitNamed('lb', ['force'])?.symbol).toBe('lbf');
		expect(unitNamed('kPa', ['pressure', 'absolute-pressure'])?.kind).toBe('pressure');
		expect(unitNamed('kPa', ['absolute-pressure'])?.symbol).toBe('kPa abs');
	});

	it('is unknown when nothing is left of it, or when it belongs to another kind', () => {
		expect(unitNamed('-', ['count'])).toBeUndefined();
		expect(unitNamed('', ['count'])?.kind).toBe('count');
		expect(unitNamed('psi', ['length'])).toBeUndefined();
		for (const name of ['__proto__', 'constructor', 'toString', 'parsec']) expect(unitNamed(name)).toBeUndefined();
	});
});
