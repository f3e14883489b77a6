import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../support/model.ts';
import { close, is, notKnown, num, psi, sheetOf, solved } from '../by-hand.ts';

const q = (answers: Parameters<typeof sheetOf>[0], build: 'boosted' | 'unboosted' = 'boosted') =>
	solved(sheetOf(answers, buildSheet(build)));

describe('fuel', () => {
	test.each([
		['petrol', 14.7, 745, 43.44e6],
		['petrol-e10', 14.1, 749.4, 41.7e6],
		['e85', 9.81, 782.4, 29.3e6],
	])('%s burns in %d times its mass of air', (kind, air, density, heat) => {
		const all = q({ 'fuel.kind': is(kind) });
		expect(all('fuel.stoichiometric_ratio').value).toBe(air);
		expect(all('fuel.density').value).toBe(density);
		expect(all('fuel.heating_value').value).toBe(heat);
	});

	test('of E85 needs half as much again as petrol for the same air, and gives near the same power', () => {
		const [petrol, e85] = ['petrol', 'e85'].map(kind => q({ 'fuel.kind': is(kind) }));
		close(Number(e85!('fuel.flow').value) / Number(petrol!('fuel.flow').value), 14.7 / 9.81, 'flow');
		close(Number(e85!('engine.power').value) / Number(petrol!('engine.power').value), 1.01, 'power', 0.02);
	});

	test('octane is the index plus 5, with the sensitivity named, and RON as it is', () => {
		expect(q({ 'fuel.octane': num(91, 'AKI') })('fuel.octane_ron')).toMatchObject({
			value: 96,
			assumed: ['fuel.octane_sensitivity'],
		});
		expect(q({ 'fuel.octane': num(98, 'RON') })('fuel.octane_ron')).toMatchObject({ value: 98, assumed: [] });
		expect(q({ 'fuel.octane': notKnown })('fuel.octane_ron').missing).toEqual(['fuel.octane']);
	});
});

describe('lambda at full load', () => {
	test('is as meant when boosted, the usual 0.80 where nobody said', () => {
		expect(q({ 'boost.lambda': num(0.78) })('fuel.lambda_full_load').value).toBe(0.78);
		expect(q({ 'boost.lambda': notKnown })('fuel.lambda_full_load')).toMatchObject({
			value: 0.8,
			assumed: ['boost.lambda'],
		});
	});

	test('is the usual 0.87 unboosted: an answer about boost is not in effect there', () => {
		const unboosted = q({ 'boost.lambda': num(0.75) }, 'unboosted');
		expect(unboosted('fuel.lambda_full_load')).toMatchObject({ value: 0.87, assumed: ['boost.lambda'] });
	});

	test('does not enter power', () => {
		const [lean, rich] = [0.9, 0.75].map(lambda => q({ 'boost.lambda': num(lambda) })('engine.power').value);
		expect(lean).toBe(rich);
	});
});

describe('pressure at the rail', () => {
	test('rises with boost where the regulator sees the manifold, and only there', () => {
		const set = { 'fuel.pressure': num(43.5, 'psi'), 'boost.target': num(10, 'psi') };
		close(q({ ...set, 'fuel.reference': is('manifold') })('fuel.rail_set_point').value, 53.5 * psi, 'manifold');
		close(q({ ...set, 'fuel.reference': is('atmosphere') })('fuel.rail_set_point').value, 43.5 * psi, 'atmosphere');
		expect(q({ ...set, 'fuel.reference': notKnown })('fuel.rail_set_point').missing).toEqual(['fuel.reference']);
	});

	test('needs no reference unboosted at full load, but at idle it does', () => {
		const open = q({ 'fuel.reference': notKnown }, 'unboosted');
		expect(open('fuel.rail_set_point').missing).toEqual([]);
		expect(open('fuel.idle_pressure_expected').missing).toEqual(['fuel.reference']);
	});

	test('at idle is 8 to 10 psi under a manifold-referenced set point', () => {
		const all = q({ 'fuel.pressure': num(43.5, 'psi'), 'fuel.reference': is('manifold') });
		const under = 43.5 - Number(all('fuel.idle_pressure_expected').value) / psi;
		expect(under).toBeGreaterThan(8);
		expect(under).toBeLessThan(10);
	});
});
