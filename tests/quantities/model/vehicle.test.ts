import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../src/sheet/sheet.ts';
import { changed } from '../../support/audited.ts';
import { buildSheet } from '../../support/model.ts';
import { stateOf } from '../by-hand.ts';

const boosted = buildSheet('boosted');

/** A figure of a build with some answers changed; undefined: not known, null: does not apply. */
function figure(id: string, answers: Record<string, Answer | undefined> = {}): unknown {
	const { graph, values } = stateOf(changed(boosted, answers));
	return values[graph.slotOf.get(id)!];
}

const given = (value: number, unit: string): Answer => ({ value, unit, known: 'measured' });

describe('the car around the engine, worked out by hand from the answers', () => {
	test('a stop from 100 mph with 3000 lb into discs of 12 x 1 in', () => {
		const [mass, speed] = [3000 * 0.45359237, 100 * 0.44704];
		const iron = 7200 * (Math.PI / 4) * 0.3048 ** 2 * 0.64 * 0.0254 * 0.6;
		const warmer = (0.35 * 0.5 * mass * speed ** 2) / (iron * 530);
		const answers = {
			'driveline.vehicle_mass': given(3000, 'lb'),
			'driveline.highest_speed': given(100, 'mph'),
			'driveline.front_disc_diameter': given(12, 'in'),
			'driveline.front_disc_thickness': given(1, 'in'),
		};
		expect(figure('driveline.disc_heating', answers)).toBeCloseTo(warmer, 6);
		expect(figure('driveline.disc_temperature', answers)).toBeCloseTo(warmer + (90 + 459.67) / 1.8, 6);
		const solid = { ...answers, 'driveline.front_brakes': { value: 'solid-discs' } };
		expect(figure('driveline.disc_heating', solid)).toBeCloseTo(0.6 * warmer, 6);
		expect(figure('driveline.disc_heating', { ...answers, 'driveline.front_brakes': { value: 'drums' } })).toBeNull();
		expect(figure('driveline.disc_heating', { 'driveline.front_brakes': undefined })).toBeUndefined();
	});

	test('first gear: tires that hold less than the engine gives decide', () => {
		const light = figure('driveline.axle_torque', { 'driveline.vehicle_mass': given(2000, 'lb') });
		expect(light).toBeCloseTo(1.1 * 0.65 * 2000 * 4.4482216 * 13 * 0.0254, 2);
		const torque = figure('engine.peak_torque') as number;
		const heavy = figure('driveline.axle_torque', { 'driveline.vehicle_mass': given(9000, 'lb') });
		expect(heavy).toBeCloseTo(torque * 2.95 * 3.5, 6);
	});

	test('a charge pipe is pushed apart by boost times its area', () => {
		const pounds = 8 * (Math.PI / 4) * 2.87 ** 2;
		expect(figure('boost.pipe_force')).toBeCloseTo(pounds * 4.4482216, 3);
	});

	test('a smaller wastegate passes less in step with its area', () => {
		const share = figure('boost.wastegate_share') as number;
		const half = figure('boost.wastegate_share', { 'boost.wastegate_bore': given(1.97 / Math.SQRT2, 'in') });
		expect(half).toBeCloseTo(share / 2, 9);
		const margin = figure('boost.wastegate_margin') as number;
		expect(margin).toBeCloseTo(share / (figure('boost.bypass_share') as number) - 1, 12);
	});

	test('without a turbocharger there is no turbine', () => {
		const supercharged = { 'boost.kind': { value: 'supercharger' } };
		for (const id of ['boost.turbine_inlet_pressure', 'boost.bypass_share', 'boost.wastegate_margin'])
			expect(figure(id, supercharged), id).toBeNull();
	});

	test.each([
		[99, 1],
		[100, 400],
		[500, 3000],
		[650, 2850],
		[3500, 3000],
	])('driven %d miles, the next check is in %d', (driven, left) => {
		const answers = { 'build.miles_since_first_drive': given(driven, 'mi') };
		expect(figure('build.next_check_in', answers)).toBeCloseTo(left * 1609.344, 3);
	});
});

describe('a blend', () => {
	const e85 = { 'fuel.kind': { value: 'e85' } };
	test('needs fuel between gasoline and E85, by its measured ethanol', () => {
		const flow = (answers: Record<string, Answer>) => figure('fuel.flow', { ...e85, ...answers }) as number;
		const [half, full] = [flow({ 'fuel.ethanol': given(50, '%') }), flow({})];
		expect(half / full).toBeCloseTo(9.81 / 11.77, 2);
		expect(flow({ 'fuel.ethanol': given(85, '%') }) / full).toBeCloseTo(1, 3);
	});

	test('is asked for with E85 alone: what stands there with gasoline does not count', () => {
		const petrol = { 'fuel.kind': { value: 'petrol' } };
		expect(figure('fuel.flow', { ...petrol, 'fuel.ethanol': given(50, '%') })).toBe(figure('fuel.flow', petrol));
	});
});
