import { describe, expect, test } from 'vitest';
import { fuelFlow, fuels } from '../../src/physics/fuels.ts';
import { expectRefusals } from './spoilt.ts';

describe('pump fuels', () => {
	test('need less air and carry less heat the more ethanol they hold, and are heavier and thicker', () => {
		const { petrol, 'petrol-e10': e10, e85 } = fuels;
		for (const less of ['stoichiometricRatio', 'heatingValue'] as const) {
			expect(e10[less]).toBeLessThan(petrol[less]);
			expect(e85[less]).toBeLessThan(e10[less]);
		}
		for (const more of ['density', 'viscosity'] as const) {
			expect(e10[more]).toBeGreaterThan(petrol[more]);
			expect(e85[more]).toBeGreaterThan(e10[more]);
		}
	});

	test('give nearly the same heat for the same air, so E85 takes half as much again of fuel', () => {
		const heat = (fuel: { heatingValue: number; stoichiometricRatio: number }) =>
			fuel.heatingValue / fuel.stoichiometricRatio;
		expect(heat(fuels.e85) / heat(fuels.petrol)).toBeCloseTo(1.011, 3);
		const [e85, petrol] = [fuels.e85, fuels.petrol].map(fuel => fuelFlow(1, 0.8, fuel.stoichiometricRatio));
		expect(e85! / petrol!).toBeCloseTo(1.498, 3);
	});
});

test('fuel for air is refused without air, lambda or ratio', () => {
	expectRefusals((a, l, r) => fuelFlow(a!, l!, r!), { 'air flow': 0.4, lambda: 0.8, 'stoichiometric ratio': 14.7 });
});
