import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstFault, keysIn, sizeOf } from '../../src/sheet/json-text.ts';
import { seed } from '../counts.ts';

/** The same, of what was read. */
function sizeOfData(data: unknown): { depth: number; count: number; keys: number } {
	if (typeof data === 'string') return { depth: 0, count: 1, keys: 0 };
	if (typeof data !== 'object' || data === null) return { depth: 0, count: 0, keys: 0 };
	const inside = (Array.isArray(data) ? data : Object.values(data)).map(sizeOfData);
	const keys = Array.isArray(data) ? 0 : inside.length;
	const sum = (of: 'count' | 'keys') => inside.reduce((all, one) => all + one[of], 0);
	return {
		depth: 1 + Math.max(0, ...inside.map(({ depth }) => depth)),
		count: 2 + keys + sum('count'),
		keys: keys + sum('keys'),
	};
}

describe('the size of a JSON text', () => {
	it('is that of what the text says, however it is written', () => {
		fc.assert(
			fc.property(fc.jsonValue({ stringUnit: 'binary', maxDepth: 6 }), fc.constantFrom(0, 2), (data, indent) => {
				const text = JSON.stringify(data, null, indent);
				const read: unknown = JSON.parse(text);
				expect(sizeOf(text)).toEqual(sizeOfData(read));
				expect(keysIn(read)).toBe(sizeOf(text).keys);
				expect(firstFault(text)).toBeNull();
			}),
			{ seed, numRuns: 300 },
		);
	});

	it.each(['"[[[{', '["\\"[[["', '["\\\\", [1]]', '{"a:b": ":"}'])('takes signs in strings for no signs: %s', text => {
		const bare = text.replace(/"(?:[^"\\]|\\.)*("|$)/g, '');
		expect(sizeOf(text).depth).toBe(sizeOf(bare).depth);
		expect(sizeOf(text).keys).toBe(sizeOf(bare).keys);
	});

	it('is right up to the first fault, behind which nothing is walked: brackets hidden in a broken string do no harm', () => {
		for (const hidden of [`"\n${'['.repeat(200_000)}`, `/* " */${'['.repeat(200_000)}`]) {
			expect(sizeOf(hidden).depth).toBeLessThan(2);
			expect(firstFault(hidden)).not.toBeNull();
		}
	});
});
