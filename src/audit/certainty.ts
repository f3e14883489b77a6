import type { State } from '../quantities/pass.ts';
import { slotNamed } from '../quantities/replace.ts';
import { makeSampling } from '../quantities/sampling.ts';
import { seedFrom } from '../quantities/sequence.ts';
import type { Judge, Verdict } from '../rulebook/judge.ts';
import { answerTo, type Sheet } from '../sheet/sheet.ts';
import { ranked } from './ranked.ts';

/** How sure an audit is: the band of each number and the share of draws behind each verdict. */
export interface Certainty {
	band(slot: number): readonly [number, number] | null;
	/** Side by side with the verdicts it was made for. */
	readonly sure: readonly (number | null)[];
}

/** Without draws nothing is claimed. */
export const unsaid: Certainty = { band: () => null, sure: [] };

/** A twentieth of the draws lies under the band, a twentieth over it. */
const tail = 0.05;

/** Draws the graph `draws` times and judges each draw. The seed comes from the sheet: the same sheet, the same bands. */
export function certaintyOf(
	sheet: Sheet,
	state: State,
	judge: Judge,
	verdicts: readonly Verdict[],
	draws: number,
): Certainty {
	if (draws === 0) return unsaid;
	const seed = seedFrom(JSON.stringify(sheet.answers));
	const sampling = makeSampling(state, id => answerTo(sheet, id), seed);
	const watched = [...sampling.moving].filter(slot => typeof state.values[slot] === 'number');
	// A row a draw, so that what is written together lies together.
	const drawn = new Float64Array(draws * watched.length);
	const starts = startsOf(judge, verdicts);
	const touched = judge.touchedBy(sampling.moving);
	const same = new Uint32Array(verdicts.length);
	for (let index = 0; index < draws; index++) {
		const values = sampling.draw(index);
		const row = index * watched.length;
		for (let column = 0; column < watched.length; column++) {
			const value = values[watched[column]!];
			drawn[row + column] = typeof value === 'number' ? value : Number.NaN;
		}
		for (const place of touched) {
			const start = starts[place]!;
			const words = judge.wordsOf(place, values);
			for (let subject = 0; subject < words.length; subject++) {
				if (verdicts[start + subject]?.verdict === words[subject]) same[start + subject]!++;
			}
		}
	}
	const bands = new Map<number, readonly [number, number]>();
	for (const [column, slot] of watched.entries()) {
		const known = finiteIn(drawn, watched.length, column);
		if (known.length > draws / 2)
			bands.set(slot, [
				ranked(known, Math.floor(tail * (known.length - 1))),
				ranked(known, Math.ceil((1 - tail) * (known.length - 1))),
			]);
	}
	return {
		band: slot => widened(state, slot, bands.get(slot) ?? exact(state, slot)),
		sure: sureOf(judge, verdicts, touched, same, draws),
	};
}

/** The finite numbers in one column of a table that is kept row by row. */
function finiteIn(table: Float64Array, columns: number, column: number): Float64Array {
	const found = new Float64Array(table.length / columns);
	let count = 0;
	for (let at = column; at < table.length; at += columns) {
		const value = table[at]!;
		if (Number.isFinite(value)) found[count++] = value;
	}
	return found.subarray(0, count);
}

/** Where the verdicts of each rule begin. */
function startsOf({ rulebook }: Judge, verdicts: readonly Verdict[]): number[] {
	let at = 0;
	return rulebook.rules.map(rule => {
		const start = at;
		while (verdicts[at]?.rule === rule) at++;
		return start;
	});
}

/** The share of draws with the nominal verdict; a rule that nothing moves is as sure as its answers. */
function sureOf(
	{ rulebook }: Judge,
	verdicts: readonly Verdict[],
	touched: readonly number[],
	same: Uint32Array,
	draws: number,
): number[] {
	const moved = new Set(touched.map(place => rulebook.rules[place]));
	return verdicts.map(({ rule }, index) => (moved.has(rule) ? same[index]! / draws : 1));
}

/** A band at least as wide as the limits that its quantity names for its ends. */
function widened(state: State, slot: number, band: readonly [number, number] | null): readonly [number, number] | null {
	const { quantity } = state.graph.nodes[slot]!;
	const ends = quantity && 'ends' in quantity ? quantity.ends : undefined;
	if (!ends || !band) return band;
	const [low, high] = ends.map(id => state.values[slotNamed(state.graph, id)]);
	return [Math.min(band[0], Number(low ?? band[0])), Math.max(band[1], Number(high ?? band[1]))];
}

/** A number that no draw moves is its own band. */
function exact(state: State, slot: number): readonly [number, number] | null {
	const value = state.values[slot];
	return typeof value === 'number' ? [value, value] : null;
}
