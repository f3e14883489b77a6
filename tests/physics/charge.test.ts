import { describe, expect, it } from 'vitest';
import { chargeOf } from '../../src/physics/charge.ts';
import { enthalpyAt, gammaAt, heatAt } from '../../src/physics/gas.ts';

describe('the two gases of a charge', () => {
	it('have no enthalpy at 298.15 K, and the burnt one none that jumps where its two tables meet', () => {
		for (const [lambda, ethanol, residual] of [
			[0.7, 0, 0.06],
			[1, 0.85, 0],
			[1.3, 1, 0.2],
		] as const) {
			const { unburnt, burnt } = chargeOf(lambda, ethanol, residual);
			expect(enthalpyAt(unburnt, 298.15)).toBeCloseTo(0, 6);
			// The mean heat of burnt gas from 298 to 1000 K lies between 1.1 and 1.35 kJ/kgK.
			const mean = enthalpyAt(burnt, 1000) / (1000 - 298.15);
			expect(mean).toBeGreaterThan(1100);
			expect(mean).toBeLessThan(1350);
		}
	});

	it('are continuous through lambda 1', () => {
		const [rich, lean] = [chargeOf(1 - 1e-9, 0.1, 0.06), chargeOf(1, 0.1, 0.06)];
		expect(rich.burnt.constant / lean.burnt.constant).toBeCloseTo(1, 6);
		expect(heatAt(rich.unburnt, 700) / heatAt(lean.unburnt, 700)).toBeCloseTo(1, 6);
		expect(rich.kept).toBeLessThan(1);
		expect(lean.kept).toBe(0);
		expect(chargeOf(1.5, 0, 0).kept).toBe(0);
	});

	it('rich mixture: more fuel vapor lowers gamma before the flame, CO and H2 raise the gas constant behind it', () => {
		const [rich, lean] = [chargeOf(0.75, 0, 0.06), chargeOf(1, 0, 0.06)];
		expect(gammaAt(rich.unburnt, 700)).toBeLessThan(gammaAt(lean.unburnt, 700));
		expect(rich.burnt.constant).toBeGreaterThan(lean.burnt.constant);
	});

	it('keeps the heat of CO and H2: by hand at lambda 0.8, from the balance of carbon, hydrogen and oxygen', () => {
		const [c, h] = [8.26 / 0.11483, 15.5 / 0.11483];
		const short = 0.4 * (c + h / 4);
		const { kept } = chargeOf(0.8, 0, 0);
		// Of what is short, CO and H2 in water-gas balance 3.5: tried until it fits.
		const balance = (co: number) => 3.5 * (c - co) * (short - co) - co * (h / 2 - short + co);
		let [low, high] = [0, Math.min(c, short)];
		for (let n = 0; n < 60; n++) {
			const middle = (low + high) / 2;
			if (balance(middle) > 0) low = middle;
			else high = middle;
		}
		expect(kept / (282.99e3 * low + 241.83e3 * (short - low))).toBeCloseTo(1, 9);
	});

	it('with the residual, which is burnt gas: the gas constant lies between the two by mass', () => {
		const [none, some] = [chargeOf(0.87, 0, 0), chargeOf(0.87, 0, 0.2)];
		expect(some.unburnt.constant).toBeCloseTo(0.8 * none.unburnt.constant + 0.2 * none.burnt.constant, 3);
	});

	it('with ethanol by volume: half and half is 0.514 of it by mass', () => {
		const [gasoline, half, ethanol] = [0, 0.5, 1].map(share => {
			const { unburnt } = chargeOf(2, share, 0);
			return unburnt;
		});
		expect(half!.constant).toBeGreaterThan(gasoline!.constant);
		expect(half!.constant).toBeLessThan(ethanol!.constant);
		// Per kg of fuel with twice the air it needs: by hand from moles over mass.
		const by = (w: number) => {
			const [g, e] = [(1 - w) / 0.11483, w / 0.04607];
			const oxygen = 2 * (8.26 * g + 2 * e + (15.5 * g + 6 * e) / 4 - e / 2);
			return (8.31446261815324 * (g + e + 4.773 * oxygen)) / (1 + oxygen * (0.031998 + 3.773 * 0.028013));
		};
		expect(half!.constant / by((0.5 * 789) / (0.5 * 789 + 0.5 * 745))).toBeCloseTo(1, 9);
	});

	it.each([
		['lambda', [0.4, 0, 0]],
		['ethanol share', [1, 1.1, 0]],
		['residual', [1, 0, 0.6]],
	] as const)('refuses %s', (what, [lambda, ethanol, residual]) => {
		expect(() => chargeOf(lambda, ethanol, residual)).toThrow(what);
	});
});

it.each([0.8, 1, 1.3])(
	'lambda %s: the unburnt gas is fresh charge and residual by mass, with the oxygen that a lean one leaves',
	lambda => {
		const { unburnt, burnt } = chargeOf(lambda, 0.1, 0.1);
		const fresh = chargeOf(lambda, 0.1, 0).unburnt.constant;
		// Molar masses are rounded: 1e-7 of it.
		expect(unburnt.constant).toBeCloseTo(0.9 * fresh + 0.1 * burnt.constant, 3);
	},
);
