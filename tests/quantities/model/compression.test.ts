import { describe, expect, test } from 'vitest';
import { emptySheet } from '../../../src/sheet/sheet.ts';
import { close, is, num, psi, sheetOf, solved } from '../by-hand.ts';

const q = (answers: Parameters<typeof sheetOf>[0]) => solved(sheetOf(answers, emptySheet('compression')));
const readings = (value: (number | null)[], more = {}) => q({ 'engine.compression': num(value, 'psi'), ...more });

describe('a compression test', () => {
	test('is as even as its lowest over its highest, holes left out', () => {
		const all = readings([150, 152, null, 149, 120, 151, 150, 148]);
		close(all('engine.compression_spread').value, 120 / 152, 'spread');
		close(all('engine.compression_highest').value, 152 * psi, 'highest');
		close(all('engine.compression_lowest').value, 120 * psi, 'lowest');
	});

	test('with nothing anywhere has a highest reading of 0, and nothing to compare', () => {
		const dead = readings(new Array(8).fill(0), {
			'engine.compression_wet': num(new Array(8).fill(0), 'psi'),
			'engine.bank_layout': is('in-rows'),
		});
		expect(dead('engine.compression_highest')).toMatchObject({ value: 0, broken: undefined });
		for (const id of [
			'compression_spread',
			'compression_neighbours',
			'wet_recovery',
			'wet_recovery_lowest',
			'wet_gain',
		])
			expect(dead(`engine.${id}`), id).toMatchObject({ value: null, missing: [], broken: undefined });
	});
});

describe('two neighbours low', () => {
	const low = [150, 150, 100, 100, 150, 150, 150, 150];

	test('are found in a bank of the stated layout, never across banks', () => {
		expect(readings(low, { 'engine.bank_layout': is('in-rows') })('engine.compression_neighbours').value).toEqual([
			[3, 4],
		]);
		const odd = readings(low, { 'engine.bank_layout': is('odd-and-even') });
		expect(odd('engine.compression_neighbours').value).toEqual([]);
	});

	test('are found by the firing order where the layout is not known', () => {
		// In this one cylinders 1-4 and 5-8 stand in rows.
		const order = { 'engine.firing_order': is([1, 5, 4, 2, 6, 3, 7, 8]) };
		expect(readings(low, order)('engine.compression_neighbours').value).toEqual([[3, 4]]);
	});

	test('lack the layout where the order does not give it away, or is not there', () => {
		const flat = { 'engine.firing_order': is([1, 2, 3, 4, 5, 6, 7, 8]) };
		for (const more of [flat, {}])
			expect(readings(low, more)('engine.compression_neighbours').missing).toEqual(['engine.bank_layout']);
	});

	test('do not apply to an odd count of cylinders, and no cylinder of one has a companion', () => {
		const five = { 'engine.cylinders': is(5), 'engine.firing_order': is([1, 2, 4, 5, 3]) };
		const all = readings([150, 100, 100, 150, 150], { ...five, 'engine.bank_layout': is('in-rows') });
		for (const id of ['engine.compression_neighbours', 'ignition.companions'])
			expect(all(id), id).toMatchObject({ value: null, missing: [], broken: undefined });
	});
});

describe('a wet test', () => {
	const dry = [150, 150, 100, 150, 150, 150, 150, 150];
	const wet = (third: number | null) => ({ 'engine.compression_wet': num(dry.with(2, third as never), 'psi') });

	test('shows how much of what the lowest lacks comes back', () => {
		close(readings(dry, wet(140))('engine.wet_recovery_lowest').value, 40 / 50, 'recovery');
		close(readings(dry, wet(140))('engine.wet_gain').value, 0.4, 'gain');
		const each = readings(dry, wet(140))('engine.wet_recovery').value as readonly (number | null)[];
		close(each[2]!, 40 / 50, 'recovery of the third');
	});

	test('that leaves out the lowest lacks just that reading', () => {
		for (const id of ['engine.wet_recovery_lowest', 'engine.wet_gain'])
			expect(readings(dry, wet(null))(id).missing, id).toEqual(['engine.compression_wet']);
	});

	test('of eight alike has nothing to give back', () => {
		const alike = readings(new Array(8).fill(150), { 'engine.compression_wet': num(new Array(8).fill(155), 'psi') });
		expect(alike('engine.wet_recovery_lowest').value).toBeNull();
	});
});

test('leak-down is as uneven as its highest less its lowest', () => {
	const leaks = q({ 'engine.leakdown': num([6, 7, null, 8, 30, 7, 6, 5], '%') });
	close(leaks('engine.leakdown_spread').value, 0.25, 'spread');
});
