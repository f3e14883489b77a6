import { describe, expect, test } from 'vitest';
import { inferUnit, type Misfit, type Reading, readInUnit } from '../../src/log/column-unit.ts';
import { ColumnValues } from '../../src/log/column-values.ts';
import { scaled } from '../../src/log/scale.ts';
import { channels } from '../support/recorded.ts';

const channel = (id: string) => channels().find(one => one.id === id)!;
const infer = (id: string, values: readonly number[], name = '') =>
	inferUnit(channel(id), name, new ColumnValues(values));
const read = (id: string, unit: string, values: readonly number[]) =>
	readInUnit(channel(id), unit, new ColumnValues(values));
/** The unit, what a value reads as in it, and the notes; or why not. */
const of = (found: Reading | Misfit, value: number) =>
	'why' in found ? found : [found.scale.unit, Number(scaled(found.scale, value).toFixed(4)), found.notes];

const bare = (unit: string) => `its header has no unit; by its values it is ${unit}`;
// Loggers divide by the ratio of gasoline, 14.7 (common practice).
const divided = 'the air-fuel ratio is divided by 14.7, as loggers do on any fuel; @AFR9.81 says otherwise';

describe('a unit that no header has', () => {
	// Water boils at 100 degC, 212 degF, 373.15 K; an engine runs at 80 to 105 degC.
	test.each([
		['coolant_temp', [20, 60, 90, 95], 100, ['degC', 373.15, [bare('degC')]]],
		['coolant_temp', [68, 140, 195, 203], 212, ['degF', 373.15, [bare('degF')]]],
		['coolant_temp', [293, 333, 363, 368], 373.15, ['K', 373.15, [bare('K')]]],
		['throttle', [0, 12, 40, 98], 50, ['%', 0.5, [bare('%')]]],
		['throttle', [0, 0.12, 0.4, 0.98], 0.5, ['1', 0.5, [bare('1')]]],
		['throttle', [0.02, 0.3, 1.02], 0.5, ['1', 0.5, [bare('1')]]],
		// What has one unit has it without a word.
		['engine_speed', [800, 2500, 6000], 800, ['rpm', 800, []]],
		['gear', [1, 2, 3], 3, ['', 3, []]],
		['lambda_1', [0.98, 1, 1.02], 1, ['lambda', 1, [bare('lambda')]]],
		['lambda_1', [12.5, 14.7, 15], 14.7, ['AFR', 1, [bare('AFR'), divided]]],
	] as const)('%s of %j', (id, values, value, expected) => {
		expect(of(infer(id, values), value)).toEqual(expected);
	});

	test('a header that says air-fuel ratio decides for it where lambda would fit as well', () => {
		expect(of(infer('lambda_1', [12.5, 14.7, 15], 'AFR'), 14.7)).toEqual(['AFR', 1, [divided]]);
		expect(of(infer('lambda_1', [0.9, 1, 1.1], 'Air fuel ratio'), 1)).toEqual({
			why: 'its values cannot be lambda, the first or only sensor',
			impossible: true,
		});
		// A word in the name of another channel decides nothing.
		expect(of(infer('throttle', [0, 12, 40, 98], 'air throttle'), 50)).toEqual(['%', 0.5, [bare('%')]]);
	});

	test('of an opening between 1.02 and 1.5 both units are left, of speeds two', () => {
		expect(infer('throttle', [0, 0.4, 1.06])).toEqual({
			why: 'its header has no unit, and its values can be % or 1',
			impossible: false,
		});
		expect(infer('throttle', [0, 0.4, 1.5])).toMatchObject({ why: expect.stringContaining('% or 1') });
		expect(infer('road_speed', [0, 30, 60])).toMatchObject({
			why: expect.stringContaining('can be mph or km/h'),
			impossible: false,
		});
	});

	test('values that are none of the channel in any unit are impossible, those that are only unlikely in a drive are not', () => {
		expect(infer('engine_speed', [-5, -4, -3])).toEqual({ why: 'its values cannot be engine speed', impossible: true });
		expect(infer('engine_speed', [100, 200, 300])).toMatchObject({ impossible: false });
		// A cold morning: no drive, and in K none at all.
		expect(infer('coolant_temp', [-30, -25, -20])).toMatchObject({ impossible: false });
		// Half of the readings must be possible.
		expect(infer('engine_speed', [-1, -1, 700, 900])).toMatchObject({ scale: { unit: 'rpm' } });
		expect(infer('engine_speed', [-1, -1, -1, 900])).toMatchObject({ impossible: true });
		// The ends of a range are in it.
		expect(infer('gear', [-1, 12])).toMatchObject({ scale: { unit: '' } });
		expect(infer('engine_speed', [400, 400])).toMatchObject({ scale: { unit: 'rpm' } });
		expect(infer('engine_speed', [10_000, 10_000])).toMatchObject({ scale: { unit: 'rpm' } });
		expect(infer('engine_speed', [12_000, 12_000, 12_001, 12_001])).toMatchObject({ impossible: false });
	});
});

describe('a unit that a header has', () => {
	test('is taken where it is one of the channel and the values allow it', () => {
		expect(of(read('coolant_temp', 'degF', [68, 195]), 212)).toEqual(['degF', 373.15, []]);
		expect(of(read('lambda_1', 'AFR', [12.5, 14.7]), 14.7)).toEqual(['AFR', 1, [divided]]);
		expect(of(read('lambda_1', 'lambda', [0.9, 1]), 0.9)).toEqual(['lambda', 0.9, []]);
		expect(read('coolant_temp', 'psi', [80])).toEqual({
			why: '"psi" is no unit of coolant temperature',
			impossible: false,
		});
		expect(read('coolant_temp', 'degC', [900, 950])).toEqual({
			why: 'its values cannot be coolant temperature',
			impossible: true,
		});
	});
});

describe('fuel trims and retard', () => {
	// SAE J1979, trims: 100/128 A - 100, so that -100 to 99.2 % about 0; other loggers count about 100 % or a factor of 1.
	const [hundred, factor] = ['100 % is taken for no trim', '1 is taken for no trim'];
	test.each([
		['%', [-8, 0, 12], 12, ['%', 0.12, []]],
		['%', [92, 100, 112], 112, ['%', 0.12, [hundred]]],
		['1', [0.92, 1, 1.12], 1.12, ['1', 0.12, [factor]]],
		['%', [0.92, 1, 1.12], 1, ['%', 0.01, []]],
		['1', [-0.08, 0, 0.12], 0.12, ['1', 0.12, []]],
		['1', [92, 100, 112], 100, ['1', 100, []]],
		// No factors about 1: too low, too high, or about 0.8 at most.
		['1', [0.4, 1, 1.2], 1, ['1', 1, []]],
		['1', [0.9, 1, 1.7], 1, ['1', 1, []]],
		['1', [0.6, 0.65, 0.7], 0.6, ['1', 0.6, []]],
		['%', [30, 60, 61], 60, ['%', 0.6, []]],
		['%', [100, 140, 150], 140, ['%', 1.4, []]],
	] as const)('in %s, of %j', (unit, values, value, expected) => {
		expect(of(read('trim_short_1', unit, values), value)).toEqual(expected);
	});

	test.each([
		[[92, 100, 112], 112, ['%', 0.12, [hundred]]],
		[[0.92, 1, 1.12], 1.12, ['1', 0.12, [factor]]],
		[[-8, 0, 12], 12, ['%', 0.12, [bare('%')]]],
		[[-8, -3, 1], -8, ['%', -0.08, [bare('%')]]],
		[[0, 1, 3], 3, ['%', 0.03, [bare('%')]]],
		[[-1, 0, 1.5], 0, { why: 'its header has no unit, and its values can be % or a share', impossible: false }],
		[[-1.5, 0, 1], 0, { why: 'its header has no unit, and its values can be % or a share', impossible: false }],
	] as const)('without a unit, of %j', (values, value, expected) => {
		expect(of(infer('trim_short_1', values), value)).toEqual(expected);
	});

	test('retard counts as positive, whichever sign it is logged with', () => {
		const turned = 'it is logged as negative; here it counts as positive';
		expect(of(infer('knock_retard', [-4, -1, 0]), -4)).toEqual(['deg', 4, [turned]]);
		expect(of(read('knock_retard', 'deg', [-4, -1, 0]), -4)).toEqual(['deg', 4, [turned]]);
		expect(of(infer('knock_retard', [0, 1, 4]), 4)).toEqual(['deg', 4, []]);
		// A little of either sign is noise about none.
		expect(of(infer('knock_retard', [-0.4, 0, 0.3]), 0.3)).toEqual(['deg', 0.3, []]);
		expect(of(infer('knock_retard', [-4, 0, 0.4]), 0.4)).toEqual(['deg', 0.4, []]);
	});
});
