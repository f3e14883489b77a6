import { describe, expect, it } from 'vitest';
import { type FullLoad, keyOf } from '../../src/physics/full-load-engine.ts';

const engine: FullLoad = {
	cylinder: { bore: 0.1, stroke: 0.09, rod: 0.155, ratio: 9.5 },
	speed: 5000,
	intakeCloses: 60,
	manifoldPressure: 1.5e5,
	chargeTemperature: 320,
	volumetricEfficiency: 0.85,
	lambda: 0.85,
	fuel: { stoichiometricRatio: 14.7, heatingValue: 43e6, ethanol: 0.1 },
	advance: 20,
};

describe('the key of an engine at full load', () => {
	const { cylinder, fuel, ...own } = engine;
	const changed = (figures: object) =>
		Object.entries(figures).map(([name, value]) => [name, Number(value) * 1.0001] as const);
	const others: readonly FullLoad[] = [
		...changed(cylinder).map(([name, value]) => ({ ...engine, cylinder: { ...cylinder, [name]: value } })),
		...changed(fuel).map(([name, value]) => ({ ...engine, fuel: { ...fuel, [name]: value } })),
		...changed(own).map(([name, value]) => ({ ...engine, [name]: value })),
		{ ...engine, burn: 1.1 },
		{ ...engine, toPeak: true },
	];

	it('differs where any one figure does', () => {
		expect(new Set([engine, ...others].map(keyOf)).size).toBe(others.length + 1);
	});

	it('is the same for the same figures, in whatever order, with usual ones left out or written', () => {
		expect(keyOf({ ...own, fuel, cylinder })).toBe(keyOf(engine));
		expect(keyOf({ ...engine, burn: 1, toPeak: false })).toBe(keyOf(engine));
	});
});
