import { describe, expect, test } from 'vitest';
import type { Kind } from '../../../src/units/kinds.ts';
import { unitNamed } from '../../../src/units/names.ts';
import { kinds, unitsOf } from '../../../src/units/table.ts';
import { everyUnit } from './every-unit.ts';

test('the kinds are those, and no others', () => {
	expect([...kinds].sort()).toEqual(Object.keys(everyUnit).sort());
});

describe.each(Object.entries(everyUnit) as [Kind, (typeof everyUnit)[Kind]][])('units of %s', (kind, rows) => {
	test('are these, the usual ones first', () => {
		expect(unitsOf(kind).map(({ symbol, kind }) => [symbol, kind])).toEqual(rows.map(([symbol]) => [symbol, kind]));
	});

	test.each(rows)('%s is %s canonical units, says the same as %s, is spelt %s', (symbol, factor, partner, also) => {
		const unit = unitsOf(kind).find(unit => unit.symbol === symbol)!;
		const spellings = also.split(' ').filter(Boolean);
		expect(unit.also).toEqual(spellings.map(spelling => spelling.replaceAll('~', ' ')));
		expect(unit.partner ?? null).toBe(partner);
		if (factor === null) expect(unit.curve).toBeDefined();
		else expect(Math.abs(unit.factor / factor - 1)).toBeLessThan(1e-14);
		for (const spelling of [symbol, ...unit.also]) expect(unitNamed(spelling, [kind]), spelling).toBe(unit);
	});
});

test('only these count from another zero: degF, degC and the pump index', () => {
	const offsets = kinds.flatMap(unitsOf).filter(({ offset }) => offset !== 0);
	expect(offsets.map(({ symbol, kind, offset }) => [symbol, kind, Number(offset.toFixed(9))])).toEqual([
		['degF', 'temperature', 255.372222222],
		['degC', 'temperature', 273.15],
		['AKI', 'octane', 5],
	]);
});

test('only these lean on a usual value, refuse a number, or are remarked upon', () => {
	const units = kinds.flatMap(unitsOf);
	expect(units.filter(({ assumes }) => assumes).map(({ symbol, assumes }) => [symbol, assumes])).toEqual([
		['AKI', 'fuel.octane_sensitivity'],
	]);
	expect(units.filter(({ refuses }) => refuses).map(({ symbol }) => symbol)).toEqual(['AN', 'AWG']);
	expect(units.filter(({ remark }) => remark).map(({ symbol }) => symbol)).toEqual(['AN']);
	expect(units.filter(({ places }) => places !== undefined).map(({ symbol, places }) => [symbol, places])).toEqual([
		['in', 3],
		['mm', 2],
	]);
});
