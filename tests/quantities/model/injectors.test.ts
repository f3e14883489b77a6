import { describe, expect, test } from 'vitest';
import { buildSheet } from '../../support/model.ts';
import { close, is, notKnown, num, poundHour, psi, sheetOf, solved } from '../by-hand.ts';

const q = (answers: Parameters<typeof sheetOf>[0], build: 'boosted' | 'unboosted' = 'boosted') =>
	solved(sheetOf(answers, buildSheet(build)));

describe('injectors', () => {
	test('flow with the square root of the pressure across', () => {
		const set = { 'injectors.rated_flow': num(42, 'lb/h'), 'injectors.rated_pressure': num(40, 'psi') };
		const fixed = {
			...set,
			'fuel.reference': is('atmosphere'),
			'fuel.pressure': num(50, 'psi'),
			'boost.target': num(10, 'psi'),
		};
		close(q(fixed)('injectors.flow').value, 42 * poundHour, 'across is 40 psi again');
		close(q({ ...fixed, 'boost.target': num(40, 'psi') })('injectors.flow').value, 21 * poundHour, 'a quarter across');
	});

	test('are eight where nobody counted, as many as there are cylinders', () => {
		const duty = (answers: object) => q({ ...answers })('injectors.pulse_width');
		expect(duty({ 'injectors.count': notKnown, 'engine.cylinders': is(8) }).value).toBe(
			duty({ 'injectors.count': is(8) }).value,
		);
		expect(duty({ 'injectors.count': notKnown }).assumed).toContain('injectors.count');
	});

	test('with nothing left across are said to be out of range, not given a figure', () => {
		const drowned = q({
			'fuel.reference': is('atmosphere'),
			'fuel.pressure': num(20, 'psi'),
			'boost.target': num(25, 'psi'),
		});
		close(drowned('injectors.pressure_across').value, -5 * psi, 'across');
		expect(drowned('injectors.duty')).toMatchObject({
			value: undefined,
			broken: expect.stringContaining('pressure across the injector'),
		});
	});

	test('by volume are turned at 0.72 kg/L, and say so', () => {
		const flow = q({ 'injectors.rated_flow': num(440, 'cc/min'), 'injectors.rated_pressure': num(43.5, 'psi') });
		close(
			flow('injectors.flow').value,
			(440e-6 / 60) * 720 * Math.sqrt(Number(flow('injectors.pressure_across').value) / (43.5 * psi)),
			'flow',
		);
		expect(flow('injectors.duty').assumed).toContain('injectors.rated_flow_density');
	});

	test('are off by what really flows over what the controller believes', () => {
		const figures = {
			'injectors.rated_flow': num(42, 'lb/h'),
			'injectors.rated_pressure': num(43.5, 'psi'),
			'fuel.pressure': num(43.5, 'psi'),
		};
		const believed = { ...figures, 'fuel.reference': is('manifold'), 'injectors.controller_flow': num(24, 'lb/h') };
		close(q(believed)('injectors.fuel_error').value, 42 / 24 - 1, 'error');
	});

	test('with a fixed rail see the vacuum of idle as more pressure, so their idle pulse is shorter', () => {
		const pulse = (reference: string) =>
			Number(q({ 'fuel.reference': is(reference) })('injectors.idle_pulse_width').value);
		expect(pulse('atmosphere')).toBeLessThan(pulse('manifold'));
	});

	test('unboosted climb in engine speed instead of boost, to where duty is the limit', () => {
		const limit = { 'injectors.duty_limit': num(85, '%') };
		const rpm = q(limit, 'unboosted')('injectors.speed_limit').value;
		close(q({ ...limit, 'engine.peak_rpm': num(rpm, 'rpm') }, 'unboosted')('injectors.duty').value, 0.85, 'duty');
		expect(q({})('injectors.speed_limit')).toMatchObject({ value: null, missing: [] });
	});
});
