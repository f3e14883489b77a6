import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SlidingMinimum } from '../../src/log/sliding-minimum.ts';
import { seed } from '../counts.ts';

test('gives the least of the readings of the last seconds, as looking at all of them does', () => {
	const reading = fc.tuple(fc.double({ min: 0, max: 3, noNaN: true }), fc.integer({ min: -50, max: 50 }));
	fc.assert(
		fc.property(fc.array(reading, { maxLength: 200 }), steps => {
			const least = new SlidingMinimum(5);
			let now = 0;
			const all: [number, number][] = [];
			for (const [step, value] of steps) {
				now += step;
				all.push([now, value]);
				const plain = Math.min(...all.filter(([time]) => now - time <= 5).map(([, one]) => one));
				expect(least.take(now, value)).toBe(plain);
			}
		}),
		{ seed },
	);
});

test('keeps up over a long log', () => {
	const least = new SlidingMinimum(5);
	for (let index = 0; index < 50_000; index++) {
		expect(least.take(index / 8, index)).toBe(Math.max(0, index - 40));
	}
});
