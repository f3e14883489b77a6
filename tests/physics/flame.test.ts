import { expect, it } from 'vitest';
import { flameAngle, laminarVelocity } from '../../src/physics/flame.ts';

const flame = { pressure: 15e5, temperature: 640, lambda: 0.87, residual: 0.06, ethanol: 0 };
const velocity = (change: Partial<typeof flame>) => laminarVelocity({ ...flame, ...change });
const angle = (change: Partial<typeof flame>, stroke = 0.0884, height = 0.011) =>
	flameAngle({ ...flame, ...change }, stroke, height);

it('the laminar velocity follows its four published terms', () => {
	const phi = 1 / 0.87;
	const [alpha, beta] = [2.4 - 0.271 * phi ** 3.51, -0.357 + 0.14 * phi ** 2.77];
	const cold = 0.305 - 0.549 * (phi - 1.21) ** 2;
	const by = cold * (640 / 298) ** alpha * (15e5 / 101325) ** beta * (1 - 2.06 * 0.06 ** 0.77);
	expect(velocity({}) / by).toBeCloseTo(1, 12);
	expect(velocity({ ethanol: 0.85 }) / velocity({})).toBeCloseTo(1 + 0.07 * 0.85 ** 0.35, 12);
	expect(velocity({ lambda: 0.5 })).toBe(velocity({ lambda: 1 / 1.6 }));
	expect(velocity({ lambda: 2 })).toBe(velocity({ lambda: 1 / 0.7 }));
});

it('the angle goes with the third root of stroke and viscosity, and the two-thirds power of height over velocity', () => {
	expect(angle({}, 0.0884, 0.022) / angle({})).toBeCloseTo(2 ** (2 / 3), 12);
	// A longer stroke at the same rpm: piston speed up, angle per length down.
	expect(angle({}, 2 * 0.0884) / angle({})).toBeCloseTo(2 ** (1 / 3) / 2, 12);
	const denser = angle({ pressure: 30e5 }) / angle({});
	expect(denser).toBeCloseTo((0.5 * (velocity({}) / velocity({ pressure: 30e5 })) ** 2) ** (1 / 3), 12);
	const viscosity = (1.85e-5 * (640 / 300) ** 0.7) / (15e5 / (275 * 640));
	const by = (Math.cbrt(0.0884 * viscosity) * Math.cbrt((0.011 / velocity({})) ** 2)) / 0.0884;
	expect(angle({}) / by).toBeCloseTo(1, 12);
});

it('burns sooner hotter, denser, with boost, richer up to lambda 0.83, and later with more residual', () => {
	expect(angle({ temperature: 700 })).toBeLessThan(angle({}));
	expect(angle({ pressure: 25e5 })).toBeLessThan(angle({}));
	expect(angle({ lambda: 1 })).toBeGreaterThan(angle({}));
	expect(angle({ residual: 0.12 })).toBeGreaterThan(angle({}));
});

it.each([
	['pressure', () => angle({ pressure: 0 })],
	['temperature', () => angle({ temperature: 0 })],
	['lambda', () => angle({ lambda: 0 })],
	['residual', () => angle({ residual: 0.5 })],
	['ethanol share', () => angle({ ethanol: -0.1 })],
	['stroke', () => angle({}, 0)],
	['height', () => angle({}, 0.09, 0)],
])('refuses %s', (what, call) => {
	expect(call).toThrow(what);
});
