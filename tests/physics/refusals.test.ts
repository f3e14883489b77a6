import { describe, expect, test } from 'vitest';
import { headFastenerArea, preloadFromTorque, stressArea } from '../../src/physics/bolts.ts';
import { pressureRatio } from '../../src/physics/compressor.ts';
import { psi } from '../../src/physics/constants.ts';
import { clutchTorque } from '../../src/physics/driveline.ts';
import { companions } from '../../src/physics/firing-order.ts';
import { injectorFlowNeeded } from '../../src/physics/injector.ts';
import { makeCurve } from '../../src/physics/interpolate.ts';
import { OutOfRange } from '../../src/physics/range.ts';
import { ringGapNeeded } from '../../src/physics/ring-gap.ts';
import { checkCylinder, sweptVolume } from '../../src/physics/slider-crank.ts';
import { clearanceVolume } from '../../src/physics/volumes.ts';

const volumes = {
	bore: 0.1,
	stroke: 0.09,
	chamber: 60e-6,
	piston: 0,
	gasketThickness: 1e-3,
	gasketBore: 0.101,
	deck: 0,
};
const cylinder = { bore: 0.1, stroke: 0.09, rod: 0.15, ratio: 9 };
const job = { fuelFlow: 0.03, injectors: 8, rpm: 6000, deadTime: 0.018 };
const clutch = { clampForce: 8000, friction: 0.3, outerRadius: 0.14, innerRadius: 0.14, faces: 2 };

describe('what is refused says what it was, what was found and what is taken', () => {
	test.each<[string, () => unknown]>([
		['fastener diameter is 0; accepted: above 0', () => headFastenerArea(0)],
		['fastener diameter is 0; accepted: above 0', () => preloadFromTorque(100, 0, 0.18)],
		['points of a curve is 1; accepted: 2 or more', () => makeCurve([[0, 0]])],
		[
			'x of a curve is 1; accepted: rising numbers',
			() =>
				makeCurve([
					[1, 0],
					[1, 2],
				]),
		],
		[
			'y of a curve is NaN; accepted: numbers',
			() =>
				makeCurve([
					[0, 0],
					[1, Number.NaN],
				]),
		],
		[
			'y of a curve is 1; accepted: a curve that rises all the way, or falls all the way',
			() =>
				makeCurve([
					[0, 0],
					[1, 2],
					[2, 0],
				]).inverse(1),
		],
		['pitch is 0; accepted: above 0', () => stressArea('metric', 0.01, 0)],
		['pitch is 0.01; accepted: under the diameter', () => stressArea('metric', 0.01, 0.01)],
		['bore is 0; accepted: above 0', () => clearanceVolume({ ...volumes, bore: 0 })],
		['bore is 0; accepted: above 0', () => checkCylinder({ ...cylinder, bore: 0 })],
		['stroke is 0; accepted: above 0', () => checkCylinder({ ...cylinder, stroke: 0 })],
		['rod is 0.045; accepted: longer than half of the stroke', () => checkCylinder({ ...cylinder, rod: 0.045 })],
		['compression ratio is 1; accepted: above 1', () => checkCylinder({ ...cylinder, ratio: 1 })],
		['compression ratio is Infinity; accepted: above 1', () => checkCylinder({ ...cylinder, ratio: Infinity })],
		['bore is 0; accepted: above 0', () => sweptVolume(0, 0.09)],
		['stroke is 0; accepted: above 0', () => sweptVolume(0.1, 0)],
		['gasket thickness is 0.03; accepted: 0 to 0.02', () => clearanceVolume({ ...volumes, gasketThickness: 0.03 })],
		[
			'volume at top dead center is 0; accepted: above 0',
			() => clearanceVolume({ ...volumes, piston: -60e-6, gasketThickness: 0 }),
		],
		[
			'ambient pressure is 1000; accepted: above the inlet loss of 1000',
			() => pressureRatio({ manifold: 1e5, coolerLoss: 0, ambient: 1000, inletLoss: 1000 }),
		],
		['inner radius is 0.14; accepted: under 0.14', () => clutchTorque(clutch)],
		['dead time is 0.018; accepted: under 0.017', () => injectorFlowNeeded(job, 0.85)],
		['cylinders in the firing order is 0; accepted: 1 to 16', () => companions([])],
		['firing order 2-3-4-2 is 4; accepted: each cylinder once: 1 is missing', () => companions([2, 3, 4, 2])],
		['cylinders is 3; accepted: an even count', () => companions([1, 2, 3])],
	])('%s', (message, call) => {
		expect(call).toThrow(OutOfRange);
		expect(call).toThrow(message);
	});

	test('under its own name, for whoever reads a trace', () => {
		expect(String(new OutOfRange('bore', 0, 'above 0'))).toBe('OutOfRange: bore is 0; accepted: above 0');
	});
});

describe('a threshold holds at the very figure, with what a conversion may cost', () => {
	test('12 psi of boost, for a ring', () => {
		const twelve = 12 * psi * (1 + 1e-9);
		expect(ringGapNeeded(0.1, { boost: twelve, hard: false })).toBeCloseTo(0.0006, 12);
		expect(ringGapNeeded(0.1, { boost: twelve * (1 + 1e-9), hard: false })).toBeCloseTo(0.0007, 12);
	});
});
