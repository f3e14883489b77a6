import { describe, expect, test } from 'vitest';
import { canonicalAnswer, unitsOfAnswer } from '../../src/sheet/canonical.ts';
import type { Answer } from '../../src/sheet/sheet.ts';
import { testModel } from '../support/model.ts';

const question = (id: string) => testModel().rulebook.questions.find(one => one.id === id)!;
const kept = (id: string, answer: Answer) => canonicalAnswer(question(id), answer);

describe('an answer in canonical units', () => {
	test('of a percentage is the number that a rule writes, to the last digit', () => {
		for (let percent = 0; percent <= 100; percent++)
			expect(kept('build.humidity', { value: percent, unit: '%' }).value).toBe(percent / 100);
	});

	test('not known is undefined, whatever else it says', () => {
		expect(kept('engine.bore', { known: 'not-known', unit: 'in' })).toEqual({
			value: undefined,
			needs: null,
			assumed: [],
		});
	});

	test('without a unit counts in the bare one', () => {
		expect(kept('boost.lambda', { value: 0.8 }).value).toBe(0.8);
		expect(kept('engine.compression_ratio', { value: 9.2 }).value).toBe(9.2);
		expect(unitsOfAnswer(question('boost.lambda'), { value: 0.8 })[0]?.symbol).toBe('1');
	});

	test('of several that once was one choice reads either form as a list', () => {
		expect(kept('harness.pump_cutoff', { value: 'crash-switch' }).value).toEqual(['crash-switch']);
		expect(kept('harness.pump_cutoff', { value: ['crash-switch', 'controller-only'] }).value).toHaveLength(2);
	});

	test('of a list keeps what could not be measured', () => {
		const psi = 6894.757293168361;
		expect(kept('engine.compression', { value: [150, null], unit: 'psi' }).value).toEqual([
			expect.closeTo(150 * psi, 6),
			null,
		]);
		expect(kept('charging.loads', { value: [['fans', 28000]], unit: 'mA' }).value).toEqual([['fans', 28]]);
		expect(kept('boost.check_valves', { value: [] }).value).toEqual([]);
	});

	test('of the pump index adds half the usual sensitivity, and says so', () => {
		expect(kept('fuel.octane', { value: 91, unit: 'AKI' })).toMatchObject({
			value: 96,
			assumed: ['fuel.octane_sensitivity'],
		});
		expect(kept('fuel.octane', { value: 96, unit: 'RON' })).toMatchObject({ value: 96, assumed: [] });
	});
});

describe('a flow of the other kind', () => {
	test('of an injector is turned at 0.72 kg/L, and says so: 10.5 cc/min are a lb/h', () => {
		const { value, needs, assumed } = kept('injectors.rated_flow', { value: 10.5, unit: 'cc/min' });
		expect(Number(value) / (0.45359237 / 3600)).toBeCloseTo(1, 3);
		expect([needs, assumed]).toEqual([null, ['injectors.rated_flow_density']]);
		expect(kept('injectors.rated_flow', { value: 42, unit: 'lb/h' }).assumed).toEqual([]);
		expect(kept('injectors.controller_flow', { value: 100, unit: 'cc/min' }).assumed).toEqual([
			'injectors.controller_flow_density',
		]);
	});

	test('of a pump waits for the density of its fuel', () => {
		const { value, needs, assumed } = kept('fuel.pump_flow', { value: 360, unit: 'kg/h' });
		expect(value).toBeCloseTo(0.1, 12);
		expect([needs, assumed]).toEqual([{ quantity: 'fuel.density', by: 'over' }, ['fuel.density']]);
		expect(kept('fuel.pump_flow', { value: 255, unit: 'L/h' })).toMatchObject({ needs: null, assumed: [] });
	});

	test('in a curve is turned point by point', () => {
		const curve = {
			value: [
				[40, 360],
				[60, 180],
			],
			unit: ['psi', 'kg/h'],
		} as const;
		const { value, needs } = kept('fuel.pump_curve', curve);
		expect((value as number[][]).map(([, flow]) => flow)).toEqual([0.1, 0.05]);
		expect(needs).toMatchObject({ quantity: 'fuel.density' });
	});
});
