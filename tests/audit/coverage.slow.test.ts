import { expect, test } from 'vitest';
import { certaintyOf } from '../../src/audit/certainty.ts';
import { type Given, Incomplete, type Strays, slotNamed } from '../../src/graph/graph.ts';
import { latinHypercube } from '../../src/graph/latin-hypercube.ts';
import { reach } from '../../src/graph/paths.ts';
import { type State, solve } from '../../src/graph/solve.ts';
import type { Uncertain } from '../../src/graph/uncertain.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { modelGraph } from '../../src/quantities/model-graph.ts';
import { uncertainSlots } from '../../src/quantities/uncertainty.ts';
import { Judge } from '../../src/rulebook/judge.ts';
import { answerTo, emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';

const figures = [
	'engine.air_flow',
	'engine.power',
	'fuel.rail_pressure_under_flow',
	'injectors.duty',
	'ignition.spark_margin',
	'engine.peak_pressure',
] as const;

/** The model without what these figures are not made from: their bands are the same, and thousands of cars take seconds. */
const { questions, quantities, rulebook, ...model } = (() => {
	const whole = testModel();
	const wanted = reach(
		figures.map(id => slotNamed(whole.graph, id)),
		slot => whole.graph.feeds[slot]!,
	);
	const kept = ({ id }: { readonly id: string }) => wanted.has(slotNamed(whole.graph, id));
	const asked = whole.rulebook.questions.filter(kept);
	const worked = whole.quantities.filter(kept);
	const book = { ...whole.rulebook, questions: asked, rules: [] };
	const graph = modelGraph(asked, worked);
	return {
		...whole,
		questions: asked,
		quantities: worked,
		rulebook: book,
		graph,
		judge: new Judge(book, graph.slotOf),
	};
})();

const whole = questions.reduce((sheet, { id }) => {
	const answer = answerTo(buildSheet('boosted'), id);
	return answer ? withAnswer(sheet, id, answer) : sheet;
}, emptySheet('whole'));

/** The same car by a person who answers what is asked first and no more: usual values stand in for the rest. */
const quick = questions
	.filter(({ id, quick }) => quick !== false && answerTo(whole, id))
	.reduce((sheet, { id }) => withAnswer(sheet, id, answerTo(whole, id)), emptySheet('quick'));

const random = chance(seed);
/** By Box and Muller: the draws of chance are this test's own, not the program's. */
const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
const strayed = ({ dimensions, apply }: Uncertain, value: Parameters<Uncertain['apply']>[0]) =>
	apply(value, Array.from({ length: dimensions }, normal), 0);

/** One car and one person: what is true of the car, and the bands that the person is shown. */
function trial(sheet: Sheet, given: ReadonlyMap<string, Given>, nominal: State, uncertain: readonly Uncertain[]) {
	const isAnswer = ({ slot }: Uncertain) => nominal.given.has(slot);
	// The true car answers the questions exactly; usual values and the model's own factors are off, as they may be.
	const strays: Strays = new Map(
		uncertain
			.filter(one => !isAnswer(one))
			.map(({ slot, dimensions, apply }) => {
				const deviates = Array.from({ length: dimensions }, normal);
				return [slot, value => apply(value, deviates, 0)];
			}),
	);
	const truth = solve(model.graph, given, new Map(), figures, strays);
	// The person reads each answer a little wrong.
	const readings = new Map(given);
	for (const one of uncertain.filter(isAnswer)) {
		const { id } = model.graph.nodes[one.slot]!;
		const { value, assumed } = given.get(id)!;
		if (!(value instanceof Incomplete)) readings.set(id, { value: strayed(one, value), assumed });
	}
	const state = { ...solve(model.graph, readings), logged: null };
	const points = ({ names }: { names: readonly string[] }) =>
		latinHypercube(names, 100, Math.floor(random() * 2 ** 32));
	const { band } = certaintyOf({ ...model, rulebook, quantities }, sheet, state, [], 100, { pointsFor: points });
	return figures.map(id => {
		const slot = slotNamed(model.graph, id);
		const value = Number(truth.values[slot]);
		const [low, high] = band(slot)!;
		return low <= value && value <= high;
	});
}

test.each([whole, quick])(
	'the 90 % band covers the truth in 84 to 96 of a hundred cars with known truth: $name',
	sheet => {
		const given = givenAnswers(sheet, questions);
		const nominal = solve(model.graph, given);
		const uncertain = uncertainSlots(questions, quantities, nominal, id => answerTo(sheet, id));
		const covered = figures.map(() => 0);
		for (let n = 0; n < counts.trials; n++)
			for (const [at, holds] of trial(sheet, given, nominal, uncertain).entries()) if (holds) covered[at]!++;
		const shares = covered.map((count, at) => [figures[at], count / counts.trials] as const);
		console.info(sheet.name, Object.fromEntries(shares));
		for (const [id, share] of shares) {
			expect(share, id).toBeGreaterThanOrEqual(0.84);
			expect(share, id).toBeLessThanOrEqual(0.96);
		}
	},
);
