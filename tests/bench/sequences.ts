// How far off the ends of bands are by number and sort of draws, against many: plain chance, one additive sequence for all
// (Kronecker's), the draws by name that audits take; the end as the number at its place, and as audits take it.
import { readFileSync } from 'node:fs';
import { stateOf } from '../../src/audit/logged.ts';
import { makeModel } from '../../src/audit/model.ts';
import { quantile } from '../../src/audit/quantile.ts';
import { uncertaintyOf } from '../../src/audit/uncertainty.ts';
import { latinHypercube, type Points } from '../../src/graph/latin-hypercube.ts';
import { makeSampler } from '../../src/graph/sampling.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { chance } from '../support/chance.ts';
import { builtRulebook } from './rulebook.ts';

const [many, seeds] = [10_000, 4];
const rulebook = builtRulebook();
const model = makeModel(rulebook, () => '');

/** Deviates from shares by a table of the draws by name: sorted, they are those of equal parts. */
const table = new Float64Array(4096);
{
	const points = latinHypercube(Array.from({ length: 1 }, String), 1000);
	const z = new Float64Array(1);
	const all = Float64Array.from({ length: 1000 }, (_, at) => {
		points.point(at, z);
		return z[0]!;
	}).sort();
	for (const at of table.keys()) table[at] = all[Math.floor((at / table.length) * 1000)]!;
}
const deviate = (share: number) => table[Math.floor(share * table.length)]!;
const primes = (count: number) => {
	const found: number[] = [];
	for (let number = 2; found.length < count; number++) if (found.every(prime => number % prime)) found.push(number);
	return found;
};

const sorts: Readonly<Record<string, (names: readonly string[], count: number, seed: number) => Points>> = {
	'by name': latinHypercube,
	chance: (names, _, seed) => {
		const random = chance(seed);
		return pointsOf(names, () => random());
	},
	additive: (names, _, seed) => {
		const [random, steps] = [chance(seed), primes(names.length).map(Math.sqrt)];
		const shifts = steps.map(() => random());
		return pointsOf(names, (index, at) => (shifts[at]! + (index + 1) * steps[at]!) % 1);
	},
};
function pointsOf(names: readonly string[], shareOf: (index: number, at: number) => number): Points {
	return {
		point(index, into) {
			for (const at of names.keys()) into[at] = deviate(shareOf(index, at));
		},
	};
}
const plainly = (sorted: Float64Array, share: number) => sorted[Math.round(share * (sorted.length - 1))]!;

for (const name of ['half-finished', 'after-changes', 'trailer-hauler']) {
	const data = JSON.parse(readFileSync(`${process.cwd()}/demo/${name}.sheet.json`, 'utf8'));
	const { sheet } = checkSheet(data, rulebook.questions);
	const state = stateOf(model, sheet);
	const sampler = makeSampler(state, uncertaintyOf(model, sheet, state));
	const slots = [...sampler.affected].filter(slot => typeof state.values[slot] === 'number');
	const z = new Float64Array(sampler.dimensions);
	const drawn = (points: Points, count: number) => {
		const columns = slots.map(() => new Float64Array(count));
		for (let index = 0; index < count; index++) {
			points.point(index, z);
			const values = sampler.evaluate(z);
			for (const [at, slot] of slots.entries()) columns[at]![index] = Number(values[slot] ?? Number.NaN);
		}
		return columns.map(column => column.filter(Number.isFinite).sort());
	};
	const right = drawn(latinHypercube(sampler.names, many, 999), many).map(
		all => [plainly(all, 0.05), plainly(all, 0.95)] as const,
	);
	console.log(`\n${name}: ends of bands off, % of their width      middle  ninth tenth`);
	for (const [sort, sequence] of Object.entries(sorts)) {
		for (const count of [150, 256, 400]) {
			for (const [way, end] of Object.entries({ 'at its place': plainly, weighted: quantile })) {
				const off: number[] = [];
				for (let seed = 0; seed < seeds; seed++) {
					for (const [at, all] of drawn(sequence(sampler.names, count, seed), count).entries()) {
						const [low, high] = right[at]!;
						if (all.length > count / 2 && high > low)
							off.push(Math.abs(end(all, 0.05) - low) / (high - low), Math.abs(end(all, 0.95) - high) / (high - low));
					}
				}
				off.sort((a, b) => a - b);
				const [middle, ninth] = [0.5, 0.9].map(share => (100 * off[Math.floor(share * off.length)]!).toFixed(2));
				console.log(
					`${sort.padEnd(10)}${String(count).padStart(5)}  ${way.padEnd(14)}${middle!.padStart(28)}${ninth!.padStart(10)}`,
				);
			}
		}
	}
}
