import { expect, test } from 'vitest';
import { latinHypercube } from '../../src/graph/latin-hypercube.ts';

const names = Array.from({ length: 60 }, (_, at) => `input.${at}`);

/** By name its coordinate in each point. */
function columns(of: readonly string[], count: number, seed?: number): Float64Array[] {
	const points = latinHypercube(of, count, seed);
	const z = new Float64Array(of.length);
	const drawn = of.map(() => new Float64Array(count));
	for (let index = 0; index < count; index++) {
		points.point(index, z);
		for (const [at, column] of drawn.entries()) column[index] = z[at]!;
	}
	return drawn;
}

/** Ends of eight equal parts of a standard normal: tables of it. */
const eighths = [-3, -1.1503, -0.6745, -0.3186, 0, 0.3186, 0.6745, 1.1503, 3];

test.each([8, 400, 2000])('of %i points each eighth of the normal distribution holds as many', count => {
	for (const column of columns(names, count)) {
		// In thousands the parts begin anew with each.
		const sorted = count > 1000 ? column.subarray(0, 1000).sort() : column.sort();
		const outside = sorted.filter((z, at) => {
			const part = Math.floor((8 * at) / sorted.length);
			return !(z > eighths[part]! - 5e-4 && z < eighths[part + 1]! + 5e-4);
		});
		expect([...outside]).toEqual([]);
	}
});

test('a coordinate is drawn by its name alone, whatever others there are, and another seed draws another', () => {
	const [, second] = columns(names, 50);
	expect(columns([names[1]!], 50)[0]).toEqual(second);
	expect(columns([names[1]!], 50, 1)[0]).not.toEqual(second);
});

test('400 points have the mean and spread of a standard normal, and no two names go together more than chance has it', () => {
	const drawn = columns(names, 400);
	const product = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, at) => sum + value * b[at]!, 0) / 400;
	let squares = 0;
	for (const [at, column] of drawn.entries()) {
		expect(Math.abs(product(column, new Float64Array(400).fill(1)))).toBeLessThan(0.01);
		expect(Math.abs(product(column, column) - 1)).toBeLessThan(0.03);
		for (const other of drawn.slice(0, at)) {
			const together = product(column, other);
			squares += together ** 2;
			// Of 1,770 pairs drawn by chance the highest lies about 3.5 spreads off, a spread being 1 in 20.
			expect(Math.abs(together)).toBeLessThan(0.23);
		}
	}
	expect(Math.sqrt(squares / 1770)).toBeLessThan(0.053);
});
