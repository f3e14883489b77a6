import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { banksOf, companions, layoutFromOrder, lowNeighbors } from '../../src/physics/firing-order.ts';

/** Firing orders of cross-plane V8s on the road. Common practice. */
const oddAndEven = [
	[1, 8, 4, 3, 6, 5, 7, 2],
	[1, 8, 7, 2, 6, 5, 4, 3],
	[1, 8, 7, 3, 6, 5, 4, 2],
	[1, 2, 7, 3, 4, 5, 6, 8],
	[1, 2, 7, 8, 4, 5, 6, 3],
	[1, 5, 6, 3, 4, 2, 7, 8],
];
const inRows = [
	[1, 5, 4, 2, 6, 3, 7, 8],
	[1, 3, 7, 2, 6, 5, 4, 8],
	[1, 5, 4, 8, 6, 3, 7, 2],
	[1, 5, 4, 8, 7, 2, 6, 3],
];

describe('bank layout found from the firing order (common practice)', () => {
	it.each(oddAndEven.map(order => [order.join('-'), order] as const))('is odd and even for %s', (_, order) => {
		expect(layoutFromOrder(order)).toBe('odd-and-even');
	});

	it.each(inRows.map(order => [order.join('-'), order] as const))('is in rows for %s', (_, order) => {
		expect(layoutFromOrder(order)).toBe('in-rows');
	});

	it('does not care where the round begins nor which way it goes', () => {
		for (const order of [...oddAndEven, ...inRows]) {
			const layout = layoutFromOrder(order);
			for (let i = 0; i < 8; i++) {
				const turned = [...order.slice(i), ...order.slice(0, i)];
				expect(layoutFromOrder(turned)).toBe(layout);
				expect(layoutFromOrder(turned.toReversed())).toBe(layout);
			}
		}
	});

	it('is not known for a flat-plane crank, whose banks take turns', () => {
		expect(layoutFromOrder([1, 8, 3, 6, 4, 5, 2, 7])).toBeNull();
		expect(layoutFromOrder([1, 5, 3, 7, 4, 8, 2, 6])).toBeNull();
	});

	it('is not known when both splits fit', () => {
		expect(layoutFromOrder([1, 2, 5, 3, 6, 7, 4, 8])).toBeNull();
	});

	it('is not known for another count of cylinders', () => {
		expect(layoutFromOrder([1, 6, 5, 4, 3, 2])).toBeNull();
	});

	it('does not turn into the other one when the banks swap their numbers', () => {
		const swapped = {
			'in-rows': (cylinder: number) => ((cylinder + 3) % 8) + 1,
			'odd-and-even': (cylinder: number) => cylinder + (cylinder % 2 === 1 ? 1 : -1),
		};
		fc.assert(
			fc.property(fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7, 8], { minLength: 8 }), order => {
				const layout = layoutFromOrder(order);
				if (layout !== null) expect([layout, null]).toContain(layoutFromOrder(order.map(swapped[layout])));
			}),
			{ seed: 8, numRuns: 300 },
		);
	});

	it('refuses an order that leaves a cylinder out', () => {
		expect(() => layoutFromOrder([1, 8, 4, 3, 6, 5, 7, 7])).toThrow('each cylinder once: 2 is missing');
	});
});

describe('banks', () => {
	it('are halves in rows, and odd against even', () => {
		expect(banksOf('in-rows', 8)).toEqual([
			[1, 2, 3, 4],
			[5, 6, 7, 8],
		]);
		expect(banksOf('odd-and-even', 6)).toEqual([
			[1, 3, 5],
			[2, 4, 6],
		]);
	});

	it('cannot be made of an odd count', () => {
		expect(() => banksOf('in-rows', 5)).toThrow('cylinders is 5; accepted: an even count');
		expect(() => banksOf('in-rows', 0)).toThrow('cylinders');
	});
});

describe('low neighbours', () => {
	const readings = [150, 100, 150, 100, 105, 150, 150, 150];

	it('are pairs in a bank, never across it', () => {
		expect(lowNeighbors(readings, 'odd-and-even', 0.75)).toEqual([[2, 4]]);
		expect(lowNeighbors(readings, 'in-rows', 0.75)).toEqual([]);
	});

	it('are counted once a pair, so three in a row are two pairs', () => {
		expect(lowNeighbors([90, 95, 100, 150, 150, 150, 150, 150], 'in-rows', 0.75)).toEqual([
			[1, 2],
			[2, 3],
		]);
	});

	it('must both be under 0.75 of the highest: at it is not low', () => {
		expect(lowNeighbors([112.5, 112.5, 150, 150], 'in-rows', 0.75)).toEqual([]);
		expect(lowNeighbors([112.4, 112.4, 150, 150], 'in-rows', 0.75)).toEqual([[1, 2]]);
	});

	it('leave out a cylinder that could not be measured', () => {
		expect(lowNeighbors([90, null, 90, 150, 150, 150, 150, 150], 'in-rows', 0.75)).toEqual([]);
	});

	it('do not show in a list without a reading above 0', () => {
		expect(() => lowNeighbors([null, null], 'in-rows', 0.75)).toThrow('highest compression reading');
	});
});

describe('companions on waste spark', () => {
	it('fire half a round apart', () => {
		expect(companions([1, 8, 4, 3, 6, 5, 7, 2])).toEqual([
			[1, 6],
			[8, 5],
			[4, 7],
			[3, 2],
		]);
		expect(companions([1, 6, 5, 4, 3, 2])).toEqual([
			[1, 4],
			[6, 3],
			[5, 2],
		]);
	});

	it('name each cylinder once, whatever the order', () => {
		fc.assert(
			fc.property(fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7, 8], { minLength: 8 }), order => {
				expect(companions(order).flat().toSorted()).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
			}),
			{ seed: 6, numRuns: 50 },
		);
	});

	it('do not exist with an odd count or a broken order', () => {
		expect(() => companions([1, 2, 4, 5, 3])).toThrow('an even count');
		expect(() => companions([1, 3, 4, 4])).toThrow('2 is missing');
	});
});
