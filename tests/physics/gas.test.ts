import { expect, it } from 'vitest';
import { gammaAt, petrolGamma } from '../../src/physics/gas.ts';

it('gamma falls along the published line: 1.3676 cold, 1.335 at the end of compression, 1.20 from 2362 K on', () => {
	expect(gammaAt(petrolGamma, 300)).toBeCloseTo(1.36761, 10);
	expect(gammaAt(petrolGamma, 700)).toBeCloseTo(1.33509, 10);
	expect(gammaAt(petrolGamma, 2300)).toBeGreaterThan(1.2);
	expect(gammaAt(petrolGamma, 2400)).toBe(1.2);
	expect(gammaAt(petrolGamma, 4000)).toBe(1.2);
});

it('gamma lies within 0.03 of another published fit between 900 and 2000 K, where most of the burning is done', () => {
	// 1.338 - 6e-5 T + 1e-8 T^2: Brunt, Rai & Emtage, SAE 981052 (1998), as quoted in public code; the paper was not opened.
	for (let kelvin = 900; kelvin <= 2000; kelvin += 100) {
		const curved = 1.338 - 6e-5 * kelvin + 1e-8 * kelvin ** 2;
		expect(Math.abs(gammaAt(petrolGamma, kelvin) - curved)).toBeLessThan(0.03);
	}
});
