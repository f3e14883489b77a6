import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeCurve } from '../../src/physics/interpolate.ts';
import { boreScale, loadSeen, meterFlow, meterVolts } from '../../src/physics/meter.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

const hour = 1 / 3600;
/** A meter that is fed so that it swings to 8 V. */
const curve = makeCurve([
	[0.6, 15 * hour],
	[1.5, 90 * hour],
	[3, 395 * hour],
	[5, 1130 * hour],
	[8, 2600 * hour],
]);
const meter = { curve, scale: 1 };

describe('an air meter', () => {
	test('undoes itself between its ends', () => {
		fc.assert(
			fc.property(between(16, 2599), between(0.5, 2), (flow, scale) => {
				const any = { curve, scale };
				const volts = meterVolts(any, flow * scale * hour);
				expect(volts.bound).toBeNull();
				expect(meterFlow(any, volts.value).value / hour).toBeCloseTo(flow * scale, 6);
			}),
			seeded,
		);
	});

	test('says on which side the truth lies past its ends', () => {
		expect(meterFlow(meter, 9)).toEqual({ value: 2600 * hour, bound: 'above' });
		expect(meterFlow(meter, 0)).toEqual({ value: 15 * hour, bound: 'below' });
		expect(meterVolts(meter, 2700 * hour)).toEqual({ value: 8, bound: 'above' });
		expect(meterVolts(meter, 5 * hour)).toEqual({ value: 0.6, bound: 'below' });
	});

	test('as a slot insert measures more air in a larger pipe, by the area', () => {
		expect(boreScale(0.09, 0.08)).toBeCloseTo((0.09 / 0.08) ** 2, 12);
		const larger = { curve, scale: boreScale(0.09, 0.08) };
		expect(meterFlow(larger, 5).value / meterFlow(meter, 5).value).toBeCloseTo(1.265625, 9);
		expect(meterVolts(larger, 1130 * hour).value).toBeLessThan(5);
	});

	test('that swings to 8 V needs a scaler of 8 V in', () => {
		expect(meterVolts(meter, (1.05 * 2600 * hour) / 1.05).value).toBeCloseTo(8, 9);
	});
});

describe('the air that the controller believes', () => {
	const matched = { ceiling: 5, scalerFull: 5, controllerCurve: null };

	test('is the air there is, up to the ceiling', () => {
		expect(loadSeen(meter, matched, 1000 * hour)).toEqual({ value: 1, bound: null });
	});

	test('stands still above the ceiling, so it shrinks against the truth', () => {
		const seen = loadSeen(meter, matched, 2260 * hour);
		expect(seen.value).toBeCloseTo(0.5, 12);
		expect(seen.bound).toBeNull();
	});

	test('is right again to the top of the scaler when the curve in the controller matches', () => {
		expect(loadSeen(meter, { ...matched, scalerFull: 8 }, 2260 * hour)).toEqual({ value: 1, bound: null });
	});

	test('is too little when a scaler is fitted and the old curve stays in the controller', () => {
		const seen = loadSeen(meter, { ceiling: 5, scalerFull: 8, controllerCurve: curve }, 1130 * hour);
		expect(seen.value).toBeCloseTo(curve.at((5 * 5) / 8) / (1130 * hour), 12);
		expect(seen.value).toBeLessThan(0.5);
	});

	test('is right with the old curve and no scaler, and clipped at the ceiling', () => {
		const old = { ceiling: 5, scalerFull: 5, controllerCurve: curve };
		expect(loadSeen(meter, old, 1000 * hour).value).toBeCloseTo(1, 9);
		expect(loadSeen(meter, old, 2260 * hour)).toEqual({ value: 0.5, bound: null });
	});

	test('is a bound where a curve ends first', () => {
		const short = makeCurve([
			[0.6, 15 * hour],
			[4, 700 * hour],
		]);
		// The meter's own curve ends under the ceiling: the ceiling's flow is at least that.
		const own = loadSeen({ curve: short, scale: 1 }, matched, 1400 * hour);
		expect(own.bound).toBe('above');
		expect(own.value).toBeCloseTo(0.5, 12);
		// So does the curve in the controller.
		expect(loadSeen(meter, { ...matched, controllerCurve: short }, 1100 * hour).bound).toBe('above');
		// The meter's volts are only a least, and under the ceiling.
		expect(loadSeen({ curve: short, scale: 1 }, { ...matched, controllerCurve: curve }, 900 * hour)).toEqual({
			value: curve.at(4) / (900 * hour),
			bound: 'above',
		});
		expect(loadSeen(meter, { ...matched, controllerCurve: curve }, 5 * hour).bound).toBe('below');
	});

	test('is no bound where the meter ends at the very ceiling: more volts would be clipped', () => {
		const toFive = makeCurve([
			[0.6, 15 * hour],
			[5, 1130 * hour],
		]);
		const seen = loadSeen({ curve: toFive, scale: 1 }, { ...matched, controllerCurve: curve }, 2260 * hour);
		expect(seen).toEqual({ value: 0.5, bound: null });
	});

	test('never passes the truth when the curves match, whatever the ceiling', () => {
		fc.assert(
			fc.property(between(2, 8), between(20, 2500), (ceiling, flow) => {
				const seen = loadSeen(meter, { ceiling, scalerFull: ceiling, controllerCurve: null }, flow * hour);
				expect(seen.value).toBeGreaterThan(0);
				expect(seen.value).toBeLessThanOrEqual(1);
			}),
			seeded,
		);
	});
});

test('what cannot be is refused by name', () => {
	expectRefusals((a, b) => boreScale(a!, b!), { 'pipe bore': 0.08, 'bore of the curve': 0.08 });
	expectRefusals(v => meterFlow(meter, v!), { volts: 3 });
	expectRefusals(q => meterVolts(meter, q!), { 'air flow': 0.1 });
	expectRefusals((c, s, q) => loadSeen(meter, { ceiling: c!, scalerFull: s!, controllerCurve: null }, q!), {
		ceiling: 5,
		'scaler full input': 8,
		'air flow': 0.1,
	});
});

test('ranges are taken to their ends and no further', () => {
	expectRange(volts => meterFlow(meter, volts), 'volts', 0, 100);
});
