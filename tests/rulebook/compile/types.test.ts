import { describe, expect, test } from 'vitest';
import { agree, differenceOf, productOf, same, sumOf } from '../../../src/rulebook/compile/types.ts';

describe('kinds that may be added, taken away, multiplied', () => {
	test('a difference moves a temperature or an absolute pressure, two of them add to nothing', () => {
		expect(sumOf('temperature', 'temperature-difference')).toBe('temperature');
		expect(sumOf('absolute-pressure', 'pressure')).toBe('absolute-pressure');
		expect(sumOf('temperature', 'temperature')).toBeNull();
		expect(sumOf('absolute-pressure', 'absolute-pressure')).toBeNull();
		expect(sumOf('pressure', 'absolute-pressure')).toBeNull();
	});

	test('what lies between two of them is a difference', () => {
		expect(differenceOf('temperature', 'temperature')).toBe('temperature-difference');
		expect(differenceOf('absolute-pressure', 'absolute-pressure')).toBe('pressure');
		expect(differenceOf('temperature', 'temperature-difference')).toBe('temperature');
		expect(differenceOf('length', 'pressure')).toBeNull();
	});

	test('a product is with a bare number, on either side', () => {
		expect(productOf('ratio', 'length')).toBe('length');
		expect(productOf('length', 'count')).toBe('length');
		expect(productOf('length', 'length')).toBeNull();
	});

	test('bare numbers and counts go together', () => {
		expect(sumOf('count', 'ratio')).toBe('count');
		expect(same({ is: 'number', kind: 'count' }, { is: 'number', kind: 'ratio' })).not.toBeNull();
		expect(same({ is: 'number', kind: 'count' }, { is: 'number', kind: 'length' })).toBeNull();
		expect(same({ is: 'number', kind: 'count' }, { is: 'yes-no' })).toBeNull();
	});
});

describe('texts that may be compared', () => {
	const choice = (...choices: string[]) => ({ is: 'text', choices }) as const;
	const written = (...choices: string[]) => ({ is: 'text', choices, written: true }) as const;

	test('a written one is among the choices, on either side', () => {
		expect(agree(written('a'), choice('a', 'b'))).toBeNull();
		expect(agree(choice('a', 'b'), written('c'))).toEqual({ text: 'c', offered: ['a', 'b'] });
		expect(agree({ is: 'text', choices: null }, written('c'))).toBeNull();
	});

	test('two questions have a choice in common', () => {
		expect(agree(choice('a', 'b'), choice('b', 'c'))).toBeNull();
		expect(agree(choice('a', 'b'), choice('c', 'd'))).not.toBeNull();
		expect(agree(choice('a', 'b'), choice())).toBeNull();
	});

	test('one of two choices is one of either', () => {
		expect(same(choice('a', 'b'), choice('b', 'c'))).toEqual(choice('a', 'b', 'c'));
		expect(same(choice('a'), { is: 'list', choices: null })).toBeNull();
	});
});
