import { describe, expect, it } from 'vitest';
import { clearanceVolume, effectiveRatio, ratioFromVolumes } from '../../src/physics/volumes.ts';

const cc = 1e-6;
const v = {
	bore: 0.1016,
	stroke: 0.0884,
	chamber: 64 * cc,
	piston: 0,
	gasketThickness: 0.001,
	gasketBore: 0.104,
	deck: 0.0005,
};

describe('ratio from volumes', () => {
	it('falls by what a dish adds and rises by what a dome takes', () => {
		expect(ratioFromVolumes({ ...v, piston: 5 * cc })).toBeLessThan(ratioFromVolumes(v));
		expect(ratioFromVolumes({ ...v, piston: -5 * cc })).toBeGreaterThan(ratioFromVolumes(v));
		expect(clearanceVolume({ ...v, piston: 5 * cc }) - clearanceVolume(v)).toBeCloseTo(5 * cc, 15);
	});

	it('lets a piston stand above the deck', () => {
		const change = clearanceVolume(v) - clearanceVolume({ ...v, deck: -0.0005 });
		expect(change).toBeCloseTo((Math.PI / 4) * 0.1016 ** 2 * 0.001, 15);
	});

	it('refuses a dome larger than the chamber', () => {
		expect(() => ratioFromVolumes({ ...v, piston: -90 * cc })).toThrow('volume at top dead center');
		expect(() => ratioFromVolumes({ ...v, gasketBore: 0 })).toThrow('gasket bore');
	});
});

describe('effective compression ratio', () => {
	const cylinder = { bore: 0.1, stroke: 0.09, rod: 0.153, ratio: 9 };

	it('is the whole ratio when the intake closes at the bottom, and less the later it closes', () => {
		expect(effectiveRatio(cylinder, 0)).toBeCloseTo(9, 12);
		const closing = [0, 20, 40, 60, 80].map(angle => effectiveRatio(cylinder, angle));
		expect(closing).toEqual(closing.toSorted((a, b) => b - a));
	});

	it('depends on the rod through its proportion to the stroke alone', () => {
		const doubled = { bore: 0.3, stroke: 0.18, rod: 0.306, ratio: 9 };
		expect(effectiveRatio(doubled, 60)).toBeCloseTo(effectiveRatio(cylinder, 60), 12);
	});

	it('refuses a closing angle that no cam has', () => {
		expect(() => effectiveRatio(cylinder, 121)).toThrow('intake closing is 121; accepted: 0 to 120');
	});
});
