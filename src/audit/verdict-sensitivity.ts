import type { Outcome } from '../expressions/tree.ts';
import { evaluationOn, valueAt } from '../graph/evaluation.ts';
import type { Values } from '../graph/graph.ts';
import { reach } from '../graph/paths.ts';
import type { State } from '../graph/solve.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import type { Model } from './model.ts';

/** Which rules have a verdict that is not the same for all the candidates of an answer. */
export type VerdictSensitivity = (slot: number, candidates: readonly Outcome[]) => Rule[];

/** What serves every answer is made once: which nodes a rule looks at in the end, and which of them each one moves. */
export function makeVerdictSensitivity({ judge, graph, rulebook }: Model, state: State): VerdictSensitivity {
	const sources = graph.nodes.map((node, slot) => node.affectedBy(graph, slot));
	const judged = graph.order.filter(slot => judge.placesReading(slot).length > 0);
	const needed = reach(judged, slot => sources[slot]!);
	const order = graph.order.filter(slot => needed.has(slot));
	/** For each slot the places in `order` that have to be evaluated anew when it changes. */
	const moves: number[][] = graph.nodes.map(() => []);
	for (const [place, slot] of order.entries()) for (const source of sources[slot]!) moves[source]!.push(place);
	const given = new Map(state.given);

	/** The values with one of them replaced; rules that read what changed are put among those affected. */
	const tryOut = (slot: number, candidate: Outcome, affected: Set<number>): Values => {
		const values = state.values.slice();
		const at = evaluationOn({ ...state, values, given });
		const stale = new Uint8Array(order.length);
		const set = (changed: number, value: Outcome): void => {
			if (Object.is(value, values[changed])) return;
			values[changed] = value;
			for (const rule of judge.placesReading(changed)) affected.add(rule);
			for (const place of moves[changed]!) stale[place] = 1;
		};
		given.set(slot, { value: candidate, assumed: [] });
		set(slot, candidate);
		for (let place = stale.indexOf(1); place >= 0; place = stale.indexOf(1, place + 1)) {
			const next = order[place]!;
			set(next, valueAt(at, next));
		}
		return values;
	};

	return (slot, candidates) => {
		if (!needed.has(slot)) return [];
		const affected = new Set<number>();
		const tried = candidates.map(candidate => tryOut(slot, candidate, affected));
		const answer = state.given.get(slot);
		if (answer) given.set(slot, answer);
		else given.delete(slot);
		const wordsIn = (rule: number, values: Values) => judge.wordsOf(rule, values).join();
		return [...affected]
			.filter(rule => {
				const words = wordsIn(rule, tried[0]!);
				return tried.some((values, index) => index > 0 && wordsIn(rule, values) !== words);
			})
			.map(rule => rulebook.rules[rule]!);
	};
}
