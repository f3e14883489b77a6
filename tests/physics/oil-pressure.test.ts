import { expect, it } from 'vitest';
import { oilPressureNeeded } from '../../src/physics/oil-pressure.ts';

const psi = 6894.757293168;

it('oil pressure needed is 10 psi per 1000 rpm, and 6 psi at the slowest idle (common practice)', () => {
	expect(oilPressureNeeded(3000) / psi).toBeCloseTo(30, 9);
	expect(oilPressureNeeded(750) / psi).toBeCloseTo(7.5, 9);
	expect(oilPressureNeeded(500) / psi).toBeCloseTo(6, 9);
	expect(() => oilPressureNeeded(-1)).toThrow('engine speed');
});
