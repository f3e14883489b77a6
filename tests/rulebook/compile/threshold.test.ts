import { describe, expect, test } from 'vitest';
import { gap } from './refused.ts';

describe('a threshold', () => {
	const threshold = (text: string) =>
		gap
			.compile(gap.text.replace('spare: 5 %', `spare: ${text}`))
			.rulebook.rules.find(({ id }) => id === 'ignition.gap-too-wide')!.thresholds.spare!;

	test('is a constant when a unit follows its number', () => {
		expect(threshold('5 %')).toEqual({ value: ['value', 0.05], kind: 'ratio', unit: '%' });
		expect(threshold('-.5')).toEqual({ value: ['value', -0.5], kind: 'ratio', unit: '1' });
	});

	test('is an expression when a sign follows its number', () => {
		expect(threshold('1.5 * ignition.spark_margin').value).toEqual([
			'*',
			['value', 1.5],
			['name', 'ignition.spark_margin'],
		]);
		expect(threshold('2 - ignition.spark_margin').value[0]).toBe('-');
	});

	test('has no noise of its conversion', () => {
		expect(threshold('70 %').value).toEqual(['value', 0.7]);
	});
});
