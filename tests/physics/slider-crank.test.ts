import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../src/physics/range.ts';
import { checkCylinder, cylinderVolume, pistonDrop, sweptVolume } from '../../src/physics/slider-crank.ts';

const seeded = { seed: 20, numRuns: 200 };
const anyStroke = fc.double({ min: 0.05, max: 0.15, noNaN: true });
const anyRodShare = fc.double({ min: 0.55, max: 4, noNaN: true });
const anyAngle = fc.double({ min: -720, max: 720, noNaN: true });

/** The wrist pin found by the rod's length alone: halving, no formula for the drop. */
function dropByRodLength(stroke: number, rod: number, angle: number): number {
	const radians = (angle * Math.PI) / 180;
	const pin = { across: (stroke / 2) * Math.sin(radians), up: (stroke / 2) * Math.cos(radians) };
	let low = pin.up;
	let high = pin.up + rod;
	for (let i = 0; i < 100; i++) {
		const middle = (low + high) / 2;
		if (Math.hypot(pin.across, middle - pin.up) < rod) low = middle;
		else high = middle;
	}
	return stroke / 2 + rod - low;
}

describe('piston position', () => {
	it('agrees with the place that the rod length alone allows', () => {
		fc.assert(
			fc.property(anyStroke, anyRodShare, anyAngle, (stroke, share, angle) => {
				expect(pistonDrop(stroke, share * stroke, angle)).toBeCloseTo(
					dropByRodLength(stroke, share * stroke, angle),
					12,
				);
			}),
			seeded,
		);
	});

	it('is nothing at the top, the stroke at the bottom, and the same on either side', () => {
		expect(pistonDrop(0.09, 0.15, 0)).toBe(0);
		expect(pistonDrop(0.09, 0.15, 180)).toBeCloseTo(0.09, 15);
		expect(pistonDrop(0.09, 0.15, -47)).toBe(pistonDrop(0.09, 0.15, 47));
	});

	it('is a pure cosine for a rod without end', () => {
		expect(pistonDrop(0.09, Number.POSITIVE_INFINITY, 60)).toBeCloseTo(0.045 * (1 - 0.5), 15);
		expect(pistonDrop(0.09, 1e6, 60)).toBeCloseTo(pistonDrop(0.09, Number.POSITIVE_INFINITY, 60), 8);
	});
});

describe('cylinder volume', () => {
	const cylinder = { bore: 0.1, stroke: 0.09, rod: 0.15, ratio: 9 };

	it('holds the ratio between bottom and top', () => {
		expect(cylinderVolume(cylinder, 180) / cylinderVolume(cylinder, 0)).toBeCloseTo(9, 12);
	});

	it('grows by the swept volume from top to bottom', () => {
		expect(cylinderVolume(cylinder, 180) - cylinderVolume(cylinder, 0)).toBeCloseTo(sweptVolume(0.1, 0.09), 15);
	});

	it('refuses a rod that cannot pass the crank, a ratio of 1, and sizes that are nothing', () => {
		expect(() => checkCylinder({ ...cylinder, rod: 0.045 })).toThrow(OutOfRange);
		expect(() => checkCylinder({ ...cylinder, ratio: 1 })).toThrow('compression ratio is 1; accepted: above 1');
		expect(() => checkCylinder({ ...cylinder, ratio: Number.NaN })).toThrow(OutOfRange);
		expect(() => cylinderVolume({ ...cylinder, stroke: 0 }, 0)).toThrow('stroke is 0; accepted: above 0');
		expect(() => sweptVolume(-0.1, 0.09)).toThrow(OutOfRange);
	});
});
