import { describe, expect, test } from 'vitest';
import { psi } from '../../src/physics/constants.ts';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { audited, changed } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const readings = (sheet = buildSheet('boosted')) => audited(sheet).audit.readings;
const one = (state: string, name: string, sheet = buildSheet('boosted')) =>
	readings(sheet).find(reading => reading.state === state && reading.reading === name);
const set = { value: 43.5, unit: 'psi', known: 'measured' } as const;

describe('what you should read', () => {
	test('a rail with its hose on the manifold reads 8 to 10 psi under its set point at idle', () => {
		const sheet = changed(buildSheet('boosted'), { 'fuel.pressure': set, 'fuel.reference': { value: 'manifold' } });
		const idle = one('idle', 'fuel-pressure', sheet)!;
		const under = 43.5 - idle.value! / psi;
		expect(under).toBeGreaterThanOrEqual(8);
		expect(under).toBeLessThanOrEqual(10);
		expect(idle.title).toBe('Fuel pressure, regulator hose on');
		expect(one('key-on', 'fuel-pressure', sheet)!.value! / psi).toBeCloseTo(43.5, 6);
	});

	test('a rail that is open to the air reads its set point, and the card speaks of no hose', () => {
		const sheet = changed(buildSheet('boosted'), { 'fuel.pressure': set, 'fuel.reference': { value: 'atmosphere' } });
		const idle = one('idle', 'fuel-pressure', sheet)!;
		expect(idle.title).toBe('Fuel pressure');
		expect(idle.value! / psi).toBeCloseTo(43.5, 6);
	});

	test('measured answers stand beside what is expected', () => {
		const sheet = changed(buildSheet('boosted'), {
			'fuel.pressure_key_on': { value: 40, unit: 'psi', known: 'measured' },
			'injectors.duty_logged': { value: 77, unit: '%', known: 'measured' },
		});
		expect(one('key-on', 'fuel-pressure', sheet)!.measured! / psi).toBeCloseTo(40, 6);
		expect(one('full-load', 'injector-duty', sheet)!.measured).toBeCloseTo(0.77, 9);
	});

	test('the controller never reads more than its ceiling, however far the meter goes', () => {
		const points = [
			[0.5, 6],
			[4, 300],
			[7, 1380],
		];
		const sheet = changed(buildSheet('boosted'), {
			'sensors.meter_scaler': { value: 'none' },
			'sensors.meter_curve': { value: points, unit: ['V', 'kg/h'], known: 'paperwork' },
		});
		const { value, high } = one('full-load', 'meter-volts', sheet)!;
		expect([value, high]).toEqual([5, 5]);
	});

	test('on a full build every reading has a value inside its band', () => {
		for (const { value, low, high, title } of readings()) {
			expect(value, title).not.toBeNull();
			expect(low, title).toBeLessThanOrEqual(value!);
			expect(high ?? Number.POSITIVE_INFINITY, title).toBeGreaterThanOrEqual(value!);
		}
	});

	test('every state has its readings', () => {
		const states = ['key-on', 'cranking', 'idle', '3000-rpm', 'full-load'];
		expect([...new Set(readings().map(({ state }) => state))]).toEqual(states);
		const kinds = ['boost', 'fuel-pressure', 'injector-duty', 'lambda', 'meter-volts', 'oil-pressure', 'system-volts'];
		expect([...new Set(readings().map(({ reading }) => reading))].sort()).toEqual(kinds);
	});

	test('an unboosted build has no boost to read', () => {
		expect(one('full-load', 'boost', buildSheet('unboosted'))).toBeUndefined();
	});

	test('what is not known yet says which answers it needs, and never a figure', () => {
		const open = readings(emptySheet('nothing')).filter(({ value }) => value === null);
		expect(open.length).toBeGreaterThan(4);
		for (const { low, high, missing, assumed } of open) {
			expect([low, high, assumed]).toEqual([null, null, []]);
			expect(missing.length).toBeGreaterThan(0);
		}
	});
});
