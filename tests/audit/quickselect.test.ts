import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quickselect } from '../../src/audit/quickselect.ts';
import { seed } from '../counts.ts';

test('what stands at a rank is what a full sort puts there, whatever the list', () => {
	const numbers = fc.array(fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ noNaN: true })), {
		minLength: 1,
		maxLength: 60,
	});
	fc.assert(
		fc.property(numbers, fc.nat(), (list, place) => {
			const rank = place % list.length;
			const sorted = Float64Array.from(list).sort();
			expect(quickselect(Float64Array.from(list), rank) - 0).toBe(sorted[rank]! - 0);
		}),
		{ seed, numRuns: 500 },
	);
});
