import { slotNamed, type Values } from '../graph/graph.ts';
import { latinHypercube, type Points } from '../graph/latin-hypercube.ts';
import { makeSampler, type Sampler } from '../graph/sampling.ts';
import type { State } from '../graph/solve.ts';
import type { Uncertain } from '../graph/uncertain.ts';
import { loggedUncertainty } from '../log/uncertainty.ts';
import type { AnyQuantity } from '../quantities/quantity.ts';
import type { Judge, Verdict } from '../rulebook/judge.ts';
import { namesRead } from '../rulebook/reads.ts';
import type { Rule, VerdictWord } from '../rulebook/rulebook.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { LoggedState } from './logged.ts';
import type { Model } from './model.ts';
import { quantile } from './quantile.ts';
import { uncertaintyOf } from './uncertainty.ts';

/** How sure an audit is: the band of each number and the share of draws behind each verdict. */
export interface Certainty {
	band(slot: number): readonly [number, number] | null;
	/** Side by side with the verdicts it was made for. */
	readonly sure: readonly (number | null)[];
}

/** What of it is asked for, and by which draws; the rest is not to be looked at, and costs nothing. */
interface AskedCertainty {
	/** Points in place of the usual sequence for the car, as draws from what a log says of it. */
	readonly pointsFor?: ((sampler: Sampler) => Points) | undefined;
	/** How sure those verdicts are alone; without `bandsOf` no bands. */
	readonly only?: (verdict: Verdict, at: number) => boolean;
	/** The bands of those slots alone. */
	readonly bandsOf?: readonly number[] | undefined;
}

/** Without draws nothing is claimed. */
export const unsaid: Certainty = { band: () => null, sure: [] };

/** A twentieth of the draws lies under the band, a twentieth over it. */
const tail = 0.05;

/**
 * Evaluates the graph at `draws` points and judges each. Each input is drawn by its id: the same sheet, the same
 * bands, and an answer that does not move a figure does not move its band.
 */
export function certaintyOf(
	model: Pick<Model, 'judge' | 'graph' | 'rulebook' | 'quantities'>,
	sheet: Sheet,
	state: LoggedState,
	verdicts: readonly Verdict[],
	draws: number,
	{ pointsFor, only, bandsOf = only && [] }: AskedCertainty = {},
): Certainty {
	if (draws === 0) return unsaid;
	const { judge, quantities } = model;
	const rules = only ? new Set(verdicts.filter(only).map(({ rule }) => rule)) : decided(verdicts);
	const targets = bandsOf && [...bandsOf, ...slotsRead(rules, state)];
	const ofCar = uncertaintyOf(model, sheet, state);
	const ofLog = state.logged ? loggedUncertainty(state, state.logged) : [];
	const sampler = makeSampler(state, [...ofCar, ...ofLog], targets);
	const usual = latinHypercube(sampler.used, draws);
	// What the sensors of the newest log are off is no part of the draws of the car.
	const dimensions = dimensionsOf(ofCar, sampler);
	const points = pointsFor?.({ ...sampler, uncertain: ofCar, dimensions, names: sampler.names.slice(0, dimensions) });
	const z = new Float64Array(sampler.dimensions);
	const watched = (bandsOf ?? [...sampler.affected]).filter(
		slot => sampler.affected.has(slot) && typeof state.values[slot] === 'number',
	);
	// A row a draw, so that what is written together lies together.
	const drawn = new Float64Array(draws * watched.length);
	const starts = startsOf(judge, verdicts);
	const affected = judge.placesReadingAny(sampler.affected).filter(place => rules.has(judge.rulebook.rules[place]!));
	const same = new Uint32Array(verdicts.length);
	for (let index = 0; index < draws; index++) {
		usual.point(index, z);
		points?.point(index, z);
		const values = sampler.evaluate(z);
		putRow(drawn, index * watched.length, watched, values);
		for (let at = 0; at < affected.length; at++) {
			const place = affected[at]!;
			countAlike(judge.wordsOf(place, values), verdicts, starts[place]!, same);
		}
	}
	const bands = new Map<number, readonly [number, number]>();
	for (const [column, slot] of watched.entries()) {
		const known = finiteIn(drawn, watched.length, column).sort();
		if (known.length > draws / 2) bands.set(slot, [quantile(known, tail), quantile(known, 1 - tail)]);
	}
	widen(bands, state, quantities);
	return {
		band: slot => bands.get(slot) ?? exact(state, slot),
		sure: sureOf(judge, verdicts, { rules, affected, same, draws }),
	};
}

/** Writes the numbers at some slots from a place on; NaN for what is none. */
function putRow(table: Float64Array, from: number, slots: readonly number[], values: Values): void {
	for (let column = 0; column < slots.length; column++) {
		const value = values[slots[column]!];
		table[from + column] = typeof value === 'number' ? value : Number.NaN;
	}
}

/** Counts which of the verdicts from a place on a draw has come to as well. */
function countAlike(
	words: readonly VerdictWord[],
	verdicts: readonly Verdict[],
	from: number,
	counts: Uint32Array,
): void {
	for (let subject = 0; subject < words.length; subject++) {
		if (verdicts[from + subject]?.verdict === words[subject]) counts[from + subject]!++;
	}
}

/** The rules that fail or hold somewhere: of the others nobody asks how sure they are. */
const decided = (verdicts: readonly Verdict[]): ReadonlySet<Rule> =>
	new Set(verdicts.flatMap(({ verdict, rule }) => (verdict === 'fails' || verdict === 'holds' ? [rule] : [])));

/** How many coordinates come before those of a log's figures. */
const dimensionsOf = (uncertain: readonly Uncertain[], { first }: Sampler): number =>
	uncertain.reduce((most, { slot, dimensions }) => Math.max(most, first.get(slot)! + dimensions), 0);

/** The slots that rules read. */
export const slotsRead = (rules: ReadonlySet<Rule>, { graph }: State): number[] =>
	[...rules].flatMap(rule => [...namesRead(rule)]).flatMap(name => graph.slotOf.get(name) ?? []);

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

/** The share of draws with the nominal verdict; a rule that nothing moves is as sure as its answers. Null: not asked for. */
function sureOf(
	{ rulebook }: Judge,
	verdicts: readonly Verdict[],
	{
		rules,
		affected,
		same,
		draws,
	}: { rules: ReadonlySet<Rule>; affected: readonly number[]; same: Uint32Array; draws: number },
): (number | null)[] {
	const moved = new Set(affected.map(place => rulebook.rules[place]));
	return verdicts.map(({ rule }, index) => {
		if (!rules.has(rule)) return null;
		return moved.has(rule) ? same[index]! / draws : 1;
	});
}

/** Makes bands at least as wide as the limits that their quantities name for their ends. */
function widen(bands: Map<number, readonly [number, number]>, state: State, quantities: readonly AnyQuantity[]): void {
	for (const quantity of quantities) {
		if (!('limit' in quantity) || !quantity.ends) continue;
		const slot = slotNamed(state.graph, quantity.id);
		const band = bands.get(slot) ?? exact(state, slot);
		if (!band) continue;
		const [low, high] = quantity.ends.map(id => state.values[slotNamed(state.graph, id)]);
		bands.set(slot, [Math.min(band[0], Number(low ?? band[0])), Math.max(band[1], Number(high ?? band[1]))]);
	}
}

/** A number that no draw moves is its own band. */
function exact(state: State, slot: number): readonly [number, number] | null {
	const value = state.values[slot];
	return typeof value === 'number' ? [value, value] : null;
}
