import { expect, it } from 'vitest';
import { enthalpyAt, gammaAt, heatAt } from '../../src/physics/gas.ts';
import { constantGas } from '../support/constant-gas.ts';

const gas = {
	constant: 280,
	c0: 900,
	c1: 0.3,
	c2: -1e-4,
	c3: 3e-8,
	c4: -4e-12,
	back: 5e6,
	from: 300,
	to: 1200,
	zero: -3e5,
};

it('the heat is the polynomial with its inverse square, and held beyond both ends', () => {
	const by = (t: number) => 900 + 0.3 * t - 1e-4 * t ** 2 + 3e-8 * t ** 3 - 4e-12 * t ** 4 + 5e6 / t ** 2;
	for (const t of [300, 512, 1200]) expect(heatAt(gas, t)).toBeCloseTo(by(t), 9);
	expect(heatAt(gas, 200)).toBe(heatAt(gas, 300));
	expect(heatAt(gas, 2000)).toBe(heatAt(gas, 1200));
});

it('gamma is heat over heat less the gas constant', () => {
	expect(gammaAt(gas, 512)).toBeCloseTo(heatAt(gas, 512) / (heatAt(gas, 512) - 280), 12);
	expect(gammaAt(constantGas(1.4, 287), 900)).toBeCloseTo(1.4, 12);
	expect(heatAt(constantGas(1.4, 287), 900)).toBeCloseTo(3.5 * 287, 9);
});

it('the enthalpy rises by the heat, inside and beyond both ends, without a step', () => {
	for (const t of [250, 299.9, 300.1, 512, 1199.9, 1200.1, 1900]) {
		const slope = (enthalpyAt(gas, t + 0.01) - enthalpyAt(gas, t - 0.01)) / 0.02;
		expect(slope / heatAt(gas, t)).toBeCloseTo(1, 6);
	}
	expect(enthalpyAt(gas, 500)).toBeCloseTo(
		-3e5 - 5e6 / 500 + 900 * 500 + 0.15 * 500 ** 2 - (1e-4 / 3) * 500 ** 3 + 7.5e-9 * 500 ** 4 - 8e-13 * 500 ** 5,
		6,
	);
	expect(enthalpyAt(constantGas(1.3, 287), 298.15)).toBe(0);
});
