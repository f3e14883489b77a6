import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/units/defined.ts';
import type { Kind } from '../../src/units/kinds.ts';
import { fromCanonical, toCanonical } from '../../src/units/unit.ts';
import { unit } from '../units/ask.ts';

const one = (kind: Kind, from: string, to: string) => fromCanonical(toCanonical(1, unit(kind, from)), unit(kind, to));

/** Exact and conventional values: NIST Special Publication 811, appendix B, as computed by GNU units 2.22. */
const defined: [string, Kind, from: string, to: string, expected: number][] = [
	['psi', 'pressure', 'psi', 'Pa', 6894.757293168361],
	['pound an hour', 'mass-flow', 'lb/h', 'g/s', 0.12599788055555555],
	['pound-foot', 'torque', 'lb-ft', 'N m', 1.3558179483314003],
	['horsepower of 550 ft lbf/s', 'power', 'hp', 'W', 745.6998715822702],
	['metric horsepower of 75 kgf m/s', 'power', 'PS', 'W', 735.49875],
	['US gallon', 'volume-flow', 'gal/h', 'L/h', 3.785411784],
	['inch', 'length', 'in', 'mm', 25.4],
	['thousandth of an inch', 'length', 'thou', 'mm', 0.0254],
	['cubic inch', 'volume', 'cu in', 'cc', 16.387064],
	['millimetre of mercury', 'pressure', 'mmHg', 'Pa', 133.322387415],
	['inch of mercury at 0 degC', 'pressure', 'inHg', 'Pa', 3386.38864],
];

/** As printed in the dimension tables of AN924 (revision 13) and AN929 (revision 13); to their rounding. */
const tubes = [
	[3, 0.188],
	[4, 0.25],
	[6, 0.375],
	[8, 0.5],
	[10, 0.625],
	[12, 0.75],
	[14, 0.875],
	[16, 1],
] as const;

/** Diameters, in: the wire table in Floyd, Electric Circuit Fundamentals, as reprinted; the last three from GNU units 2.22. */
const wires = [
	[20, 0.03196, 5e-4],
	[14, 0.06408, 5e-4],
	[12, 0.0808, 5e-4],
	[4, 0.20431, 5e-4],
	[2, 0.25763, 5e-4],
	[1, 0.2893, 5e-4],
	[0, 0.32485, 5e-4],
	[22, 0.0253465865547, 1e-6],
	[10, 0.101897115276, 1e-6],
	[0, 0.324860740243, 1e-6],
] as const;

describe('published values', () => {
	it.each(defined)('of one %s (%s) in %s is in %s', (_name, kind, from, to, expected) => {
		expect(Math.abs(one(kind, from, to) / expected - 1)).toBeLessThan(1e-9);
	});

	it('of the cubic foot a minute is 0.4719474432 L/s', () => {
		expect(toCanonical(1, unit('volume-flow', 'cu ft/min')) * 1000).toBeCloseTo(0.4719474432, 12);
	});

	it('of the international table BTU is 1055.05585262 J', () => {
		expect(toCanonical(1, unit('energy-per-mass', 'BTU/lb')) * 0.45359237).toBeCloseTo(1055.05585262, 9);
	});

	it('of the standard atmosphere is 101325 Pa', () => {
		expect(standardAtmosphere).toBe(101_325);
	});

	it.each([
		[212, 100],
		[-40, -40],
		[77, 25],
	])('of %d degF is %d degC', (fahrenheit, celsius) => {
		expect(
			fromCanonical(toCanonical(fahrenheit, unit('temperature', 'degF')), unit('temperature', 'degC')),
		).toBeCloseTo(celsius, 9);
	});

	it.each(tubes)('of dash size %d is a tube of %d in', (size, inches) => {
		expect(Math.abs(one('length', 'AN', 'in') * size - inches)).toBeLessThan(6e-4);
	});

	it.each(wires)('of %d AWG is %d in across', (gauge, inches, slack) => {
		const diameter = Math.sqrt(toCanonical(gauge, unit('area', 'AWG')) / (Math.PI / 4)) / 0.0254;
		expect(Math.abs(diameter / inches - 1)).toBeLessThan(slack);
	});
});
