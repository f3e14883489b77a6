import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contractionLoss, drawnTubing, elbowLoss, expansionLoss, type Line, lineLoss } from '../../src/physics/line.ts';
import { pipeVelocity } from '../../src/physics/pipe.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

const line: Line = {
	bore: 0.0077,
	length: 4,
	roughness: drawnTubing,
	elbows: 0,
	smallestBore: null,
	density: 745,
	viscosity: 0.55e-6,
};
const flow = 0.0528;
const head = (bore: number) => (745 * pipeVelocity(flow, 745, bore) ** 2) / 2;

describe('the loss of a fuel line', () => {
	test('is nothing without flow, and grows with every bit of it', () => {
		expect(lineLoss(line, 0)).toBe(0);
		expect(lineLoss(line, 1e-300)).toBe(0);
		fc.assert(
			fc.property(between(1e-6, 0.2), between(0.003, 0.02), fc.integer({ min: 0, max: 8 }), (q, bore, elbows) => {
				const any = { ...line, bore, elbows, smallestBore: 0.004 };
				expect(lineLoss(any, q * 1.01)).toBeGreaterThan(lineLoss(any, q));
			}),
			seeded,
		);
	});

	test('doubles with length', () => {
		expect(lineLoss({ ...line, length: 8 }, flow)).toBeCloseTo(2 * lineLoss(line, flow), 8);
	});

	test('adds one elbow at a time', () => {
		expect(lineLoss({ ...line, elbows: 3 }, flow) - lineLoss(line, flow)).toBeCloseTo(3 * elbowLoss * head(0.0077), 8);
	});

	test('adds a narrow place in and out, by the speed inside it', () => {
		const beta = 0.004 / 0.0077;
		const added = lineLoss({ ...line, smallestBore: 0.004 }, flow) - lineLoss(line, flow);
		expect(added).toBeCloseTo((0.5 * (1 - beta ** 2) + (1 - beta ** 2) ** 2) * head(0.004), 8);
	});

	test('does not count a fitting that is not narrower', () => {
		expect(lineLoss({ ...line, smallestBore: 0.0077 }, flow)).toBe(lineLoss(line, flow));
		expect(lineLoss({ ...line, smallestBore: 0.02 }, flow)).toBe(lineLoss(line, flow));
	});

	test('falls with bore, and is much the same for 10 % more viscosity', () => {
		expect(lineLoss({ ...line, bore: 0.0095 }, flow)).toBeLessThan(lineLoss(line, flow));
		expect(lineLoss({ ...line, viscosity: 0.605e-6 }, flow) / lineLoss(line, flow)).toBeCloseTo(1.02, 2);
	});
});

describe('a narrow place', () => {
	test('costs nothing when it is none, and at most half a head in and one out', () => {
		expect([contractionLoss(1), expansionLoss(1)]).toEqual([0, 0]);
		expect([contractionLoss(0), expansionLoss(0)]).toEqual([0.5, 1]);
	});
});

test('what cannot be is refused by name', () => {
	expectRefusals(
		(bore, length, elbows, density, viscosity, smallestBore, q) =>
			lineLoss(
				{
					bore: bore!,
					length: length!,
					elbows: elbows!,
					density: density!,
					viscosity: viscosity!,
					smallestBore: smallestBore!,
					roughness: drawnTubing,
				},
				q!,
			),
		{ bore: 0.0077, length: 4, elbows: 2, density: 745, viscosity: 5.5e-7, 'smallest bore': 0.005, flow: 0.05 },
	);
	expectRefusals(beta => contractionLoss(beta!), { 'bore ratio': 0.5 });
	expectRefusals(beta => expansionLoss(beta!), { 'bore ratio': 0.5 });
	expect(() => lineLoss({ ...line, roughness: 0.001 }, flow)).toThrow('relative roughness');
});

test('ranges are taken to their ends and no further', () => {
	expectRange(contractionLoss, 'bore ratio', 0, 1);
	expectRange(expansionLoss, 'bore ratio', 0, 1);
	expectRange(length => lineLoss({ ...line, length }, flow), 'length', 0, 1000);
	expectRange(elbows => lineLoss({ ...line, elbows }, flow), 'elbows', 0, 1000);
});
