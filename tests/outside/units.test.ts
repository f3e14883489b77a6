import Qty from 'js-quantities';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Kind } from '../../src/units/kinds.ts';
import { kinds, unitsOf } from '../../src/units/table.ts';
import { toCanonical } from '../../src/units/unit.ts';
import { unit } from '../units/ask.ts';

/**
 * Each kind's canonical unit as both libraries spell it, then its units: symbol = mathjs = js-quantities; a dash where a
 * library lacks the unit or, as mathjs does mmHg, rounds it at 3e-6.
 */
const spelt: Partial<Record<Kind, [base: string, ...units: string[]]>> = {
	length: ['m', 'in = inch = in; thou = mil = mil; ft = ft = ft; mm = mm = mm', 'cm = cm = cm; m = m = m'],
	area: ['m^2', 'mm2 = mm^2 = mm^2; cm2 = cm^2 = cm^2; m2 = m^2 = m^2; sq in = in^2 = in^2'],
	volume: ['m^3', 'cu in = in^3 = in^3; cc = cc = cm^3; L = litre = l; gal = gallon = gallon; m3 = m^3 = m^3'],
	pressure: [
		'Pa',
		'psi = psi = psi; bar = bar = bar; kPa = kPa = kPa; mbar = mbar = mbar',
		'inHg = - = inHg; mmHg = - = mmHg; kg/cm2 = kgf / cm^2 = -; MPa = MPa = MPa',
		'Pa = Pa = Pa',
	],
	'absolute-pressure': [
		'Pa',
		'psia = psi = psi; kPa abs = kPa = kPa; bar abs = bar = bar; mbar abs = mbar = mbar',
		'inHg abs = - = inHg; mmHg abs = - = mmHg; MPa abs = MPa = MPa; Pa abs = Pa = Pa',
	],
	'temperature-difference': ['K', 'degF = degR = -; degC = K = -; K diff = K = -'],
	angle: ['deg', 'deg = deg = deg'],
	rotation: ['rpm', 'rpm = - = rpm'],
	'mass-flow': [
		'kg/s',
		'lb/h = lbm/hour = lb/h; lb/min = lbm/minute = lb/min; kg/h = kg/hour = kg/h; kg/min = kg/minute = kg/min',
		'g/s = g/s = g/s; kg/s = kg/s = kg/s',
	],
	'volume-flow': [
		'm^3/s',
		'gal/h = gallon/hour = gal/h; gal/min = gallon/minute = gal/min; cu ft/min = ft^3/minute = ft^3/min; L/h = litre/hour = l/h',
		'L/min = litre/minute = l/min; cc/min = cm^3/minute = cm^3/min; m3/s = m^3/s = m^3/s',
	],
	power: ['W', 'hp = hp = hp; PS = 75 kgf m / s = -; kW = kW = kW; W = W = W'],
	torque: ['N m', 'lb-ft = lbf ft = lbf*ft; lb-in = lbf inch = lbf*in; N m = N m = N*m; kgf m = kgf m = -'],
	force: ['N', 'lbf = lbf = lbf; N = N = N; kN = kN = kN; kgf = kgf = -'],
	mass: ['kg', 'lb = lb = lbs; kg = kg = kg'],
	distance: ['m', 'mi = mi = mi; km = km = km; m = m = m'],
	velocity: [
		'm/s',
		'ft/s = ft/s = ft/s; ft/min = ft/minute = ft/min; mph = mi/hour = mph; km/h = km/hour = km/h',
		'm/s = m/s = m/s',
	],
	voltage: ['V', 'V = V = V; mV = mV = mV; kV = kV = kV'],
	current: ['A', 'A = A = A; mA = mA = mA'],
	resistance: ['ohm', 'ohm = ohm = ohm; kohm = kohm = kohm'],
	'resistance-per-length': [
		'ohm/m',
		'ohm/ft = ohm/ft = ohm/ft; kohm/ft = kohm/ft = kohm/ft; ohm/in = ohm/inch = ohm/in; kohm/m = kohm/m = kohm/m',
		'ohm/m = ohm/m = ohm/m',
	],
	charge: ['C', 'Ah = A hour = Ah; C = C = C'],
	time: ['s', 'ms = ms = ms; us = us = us; s = s = s'],
	days: ['day', 'days = day = day'],
	imbalance: [
		'kg m',
		'oz-in = oz inch = oz*in; g-cm = g cm = g*cm; g-mm = g mm = g*mm; g-in = g inch = g*in',
		'kg m = kg m = kg*m',
	],
	pulses: ['1/m', 'pulses/mi = mi^-1 = 1/mi; pulses/km = km^-1 = 1/km; pulses/m = m^-1 = 1/m'],
	density: [
		'kg/m^3',
		'lb/gal = lbm/gallon = lb/gal; lb/ft3 = lbm/ft^3 = lb/ft^3; kg/L = kg/litre = kg/l; kg/m3 = kg/m^3 = kg/m^3',
	],
	'energy-per-mass': [
		'J/kg',
		'BTU/lb = BTU/lbm = btu/lb; MJ/kg = MJ/kg = MJ/kg; kJ/kg = kJ/kg = kJ/kg; J/kg = J/kg = J/kg',
	],
};

/** What no library knows: trade sizes, octane, bare numbers. Temperatures have a zero of their own: below. */
const own = [
	'length AN',
	'area AWG',
	'octane AKI',
	'octane RON',
	'ratio 1',
	'ratio :1',
	'ratio %',
	'ratio pipe diameters',
	'count ',
	'temperature degF',
	'temperature degC',
	'temperature K',
];

const rows = kinds.flatMap(kind => {
	const [base = '', ...lines] = spelt[kind] ?? [];
	return lines
		.flatMap(line => line.split('; '))
		.map(line => line.split(' = ') as [string, string, string])
		.map(([symbol, math, quantities]) => ({ kind, symbol, base, math, quantities }));
});

describe('every factor', () => {
	it("is checked against a library, or is the trade's own", () => {
		const checked = rows
			.filter(({ math, quantities }) => math !== '-' || quantities !== '-')
			.map(({ kind, symbol }) => `${kind} ${symbol}`);
		const all = kinds.flatMap(kind => unitsOf(kind).map(({ symbol }) => `${kind} ${symbol}`));
		expect([...checked, ...own].sort()).toEqual(all.sort());
	});

	// mathjs gives psi and hp to 6e-11.
	it.each(rows.filter(({ math }) => math !== '-'))(
		'of $kind in $symbol is that of mathjs',
		({ kind, symbol, math, base }) => {
			expect(toCanonical(1, unit(kind, symbol)) / mathUnit(math).toNumber(base.replace('1/m', 'm^-1'))).toBeCloseTo(
				1,
				9,
			);
		},
	);

	// js-quantities rounds psi at 4e-7 and BTU at 3e-7.
	it.each(rows.filter(({ quantities }) => quantities !== '-'))(
		'of $kind in $symbol is that of js-quantities',
		({ kind, symbol, quantities, base }) => {
			const theirs = new Qty(1, quantities).to(base.replace(' ', '*')).scalar;
			expect(Math.abs(toCanonical(1, unit(kind, symbol)) / theirs - 1)).toBeLessThan(5e-7);
		},
	);

	it.each([
		['degF', 'tempF', -40],
		['degF', 'tempF', 95],
		['degC', 'tempC', -40],
		['degC', 'tempC', 21.5],
		['K', 'tempK', 300],
	])('of a temperature in %s (%s) shifts and scales %d as both libraries do', (symbol, theirs, typed) => {
		const kept = toCanonical(typed, unit('temperature', symbol));
		expect(kept).toBeCloseTo(new Qty(typed, theirs).to('tempK').scalar, 9);
		expect(kept).toBeCloseTo(mathUnit(typed, symbol).toNumber('K'), 9);
	});
});
