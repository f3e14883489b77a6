import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { railPressure, returnLineFlow } from '../../src/physics/fuel-system.ts';
import { makeCurve } from '../../src/physics/interpolate.ts';
import { drawnTubing, lineLoss } from '../../src/physics/line.ts';
import { type PumpFlow, pumpFromCurve, pumpFromPoint } from '../../src/physics/pump.ts';
import { between, expectRefusals, seeded } from './spoilt.ts';

const psi = 6894.757293168361;
const curve = makeCurve([
	[30 * psi, 0.063],
	[40 * psi, 0.059],
	[60 * psi, 0.048],
	[80 * psi, 0.03],
]);
const pump = pumpFromCurve(curve, 1);
const loss = (bore: number) => (flow: number) =>
	lineLoss(
		{ bore, length: 4, roughness: drawnTubing, elbows: 4, smallestBore: 0.9 * bore, density: 745, viscosity: 0.55e-6 },
		flow,
	);

/** The pump's own flow fed back into the line's loss, a little at a time, until nothing moves: slow, and sure. */
function byStepping(give: PumpFlow, rail: number, lose: (flow: number) => number): number {
	let flow = 0;
	for (let step = 0; step < 20_000; step++) flow += 0.02 * (give(rail + lose(flow))! - flow);
	return flow;
}

describe('the line of a return rail', () => {
	test('carries all that the pump gives against the pressure which that flow makes', () => {
		fc.assert(
			fc.property(between(20, 45), between(0.006, 0.012), between(0.9, 1.1), (set, bore, volts) => {
				const give = pumpFromCurve(curve, volts);
				const rail = set * psi;
				const found = returnLineFlow(give, rail, loss(bore))!;
				expect(found.bound).toBeNull();
				expect(Math.abs(found.value / byStepping(give, rail, loss(bore)) - 1)).toBeLessThan(1e-7);
			}),
			{ ...seeded, numRuns: 40 },
		);
	});

	test('carries less at more boost, and through a narrower line', () => {
		const flow = (rail: number, bore: number) => returnLineFlow(pump, rail * psi, loss(bore))!.value;
		expect(flow(55, 0.0077)).toBeLessThan(flow(43.5, 0.0077));
		expect(flow(43.5, 0.006)).toBeLessThan(flow(43.5, 0.0077));
	});

	test('without loss carries what the pump gives at the rail', () => {
		expect(returnLineFlow(pump, 60 * psi, () => 0)!.value).toBeCloseTo(0.048, 10);
	});

	test('proves only a least flow when the curve ends before flow and loss meet', () => {
		const found = returnLineFlow(pump, 78 * psi, loss(0.0045))!;
		expect(found.bound).toBe('above');
		expect(78 * psi + loss(0.0045)(found.value)).toBeCloseTo(80 * psi, -1);
	});

	test('cannot be decided when the curve ends under the rail pressure itself', () => {
		expect(returnLineFlow(pump, 81 * psi, () => 0)).toBeUndefined();
	});

	test('carries nothing when the pump gives nothing', () => {
		const spent = pumpFromPoint({ flow: 0.05, pressure: 40 * psi }, 1);
		expect(returnLineFlow(spent, 400 * psi, loss(0.0077))).toEqual({ value: 0, bound: null });
	});
});

describe('the pressure at the rail', () => {
	const system = { pump, regulator: 'rail', setPoint: 43.5 * psi, flow: 0.04, loss: 3 * psi } as const;

	test('is the set point while the pump holds it', () => {
		expect(railPressure(system)).toEqual({ value: 43.5 * psi, bound: null });
	});

	test('without loss is the same for a regulator in the tank', () => {
		expect(railPressure({ ...system, regulator: 'tank', loss: 0 })).toEqual({ value: 43.5 * psi, bound: null });
	});

	test('of a regulator in the tank is less by the loss', () => {
		const { value } = railPressure({ ...system, regulator: 'tank' })!;
		expect(value / psi).toBeCloseTo(40.5, 10);
	});

	test('falls to what the pump can when the engine asks more', () => {
		const { value, bound } = railPressure({ ...system, flow: 0.0585 })!;
		expect(bound).toBeNull();
		expect(value).toBeLessThan(43.5 * psi);
		expect(pump(value + 3 * psi)).toBeCloseTo(0.0585, 9);
	});

	test('does not jump where the pump begins to give out, and never rises with flow', () => {
		let before = Number.POSITIVE_INFINITY;
		for (let flow = 0.05; flow < 0.063; flow += 1e-5) {
			const { value } = railPressure({ ...system, flow })!;
			expect(value).toBeLessThanOrEqual(before + 1e-3);
			if (before < Number.POSITIVE_INFINITY) expect(before - value).toBeLessThan(0.05 * psi);
			before = value;
		}
	});

	test('is nothing, marked below, when the pump cannot give the flow even without pressure', () => {
		expect(railPressure({ ...system, flow: 0.07 })).toEqual({ value: 0, bound: 'below' });
		const weak = pumpFromPoint({ flow: 0.05, pressure: 10 * psi, fall: 0.1 / 14 / psi }, 1);
		expect(railPressure({ ...system, pump: weak, flow: 0.05, loss: 20 * psi })).toEqual({ value: 0, bound: 'below' });
	});

	test('is at least what the end of the curve proves, marked above', () => {
		const found = railPressure({ ...system, setPoint: 90 * psi, flow: 0.01 })!;
		expect(found.bound).toBe('above');
		expect(found.value / psi).toBeCloseTo(77, 4);
	});

	test('cannot be decided when the curve ends under the loss alone', () => {
		expect(railPressure({ ...system, setPoint: 90 * psi, flow: 0.01, loss: 85 * psi })).toBeUndefined();
	});

	test('is not known of a pump of which nothing is proven', () => {
		expect(railPressure({ ...system, pump: () => undefined })).toBeUndefined();
	});
});

test('what cannot be is refused by name', () => {
	expectRefusals(
		(setPoint, flow, lost) => railPressure({ pump, regulator: 'rail', setPoint: setPoint!, flow: flow!, loss: lost! }),
		{ 'set point': 3e5, 'fuel flow': 0.04, 'line loss': 2e4 },
	);
});
