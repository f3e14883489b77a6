import { type Standing as Line, standingOf } from '../../src/audit/findings.ts';
import { stateOf } from '../../src/audit/logged.ts';
import type { Model } from '../../src/audit/model.ts';
import { courseOf, readiness } from '../../src/audit/stages.ts';
import { isUnproved } from '../../src/audit/unproved.ts';
import { evaluationOn, run } from '../../src/graph/evaluation.ts';
import { slotNamed } from '../../src/graph/graph.ts';
import { reach } from '../../src/graph/paths.ts';
import type { State } from '../../src/graph/solve.ts';
import { clear, copyOf } from '../../src/graph/trace.ts';
import { plugsOf } from '../../src/plugs/parts.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { unwantedOn, wantedBy } from '../../src/quantities/wanted.ts';
import type { Verdict } from '../../src/rulebook/judge.ts';
import { type Answer, emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';

/** What stages are decided by, without draws: the open gates, counted from the first on. */
export interface Judged {
	readonly state: State;
	readonly open: number;
	readonly lines: readonly Line[];
}

/** Judges one sheet with one answer changed, again and again: only what the answer reaches is worked out anew. */
export function makeChanges(sheet: Sheet, model: Model): (id: string, answer: Answer | undefined) => Judged {
	const { graph, judge, rulebook } = model;
	const base = stateOf(model, sheet);
	const places = rulebook.rules.map((_, place) => place);
	const read = new Set<number>();
	const plugsIn = (state: State) =>
		plugsOf(
			sheet.plugs,
			rulebook.vocabulary,
			name => {
				const slot = graph.slotOf.get(name);
				if (slot === undefined) return undefined;
				read.add(slot);
				return state.values[slot];
			},
			'us',
		);
	const plugs = plugsIn(base);
	const verdicts = places.map(place => judge.judgeAt(place, base, plugs));
	const unwantedIn = (state: State) => unwantedOn(state, rulebook.questions);
	const unwanted = unwantedIn(base);
	const deciding = new Set(rulebook.questions.flatMap(wantedBy).map(name => slotNamed(graph, name)));
	const reached = new Map<string, Reached>();
	return (id, answer) => {
		let below = reached.get(id);
		if (!below) reached.set(id, (below = reachedFrom(id)));
		const state = solvedAgain(base, id, answer, below.order, model);
		const judged = verdicts.slice();
		// What an answer says of the plugs may move any line about them.
		const other = below.order.some(slot => read.has(slot));
		const now = other ? plugsIn(state) : plugs;
		for (const place of other ? places : below.places) judged[place] = judge.judgeAt(place, state, now);
		return standing(state, judged.flat(), below.order.some(slot => deciding.has(slot)) ? unwantedIn(state) : unwanted);
	};

	function reachedFrom(id: string): Reached {
		const slots = reach([slotNamed(graph, id)], slot => graph.readers[slot]!);
		return {
			order: graph.order.filter(slot => slots.has(slot) && !base.replaced.has(slot)),
			places: judge.placesReadingAny(slots),
		};
	}

	function standing(state: State, found: readonly Verdict[], unwanted: ReadonlySet<string>): Judged {
		const lines = found.map(verdict => standingOf(verdict, state, judge, isUnproved(verdict, null, judge), unwanted));
		const open = readiness(lines, courseOf(state)).filter(({ ready }) => ready).length;
		return { state, open, lines };
	}
}

interface Reached {
	readonly order: readonly number[];
	/** Of the rules, in the rulebook. */
	readonly places: readonly number[];
}

/** A solved state with another answer: the slots in `order` are worked out anew, with their reasons. */
function solvedAgain(
	base: State,
	id: string,
	answer: Answer | undefined,
	order: readonly number[],
	{ graph, rulebook }: Model,
): State {
	const given = new Map(base.given);
	const slot = slotNamed(graph, id);
	const one = givenAnswers(withAnswer(emptySheet('one answer'), id, answer), rulebook.questions).get(id);
	if (one) given.set(slot, one);
	else given.delete(slot);
	const values = base.values.slice();
	const trace = copyOf(base);
	for (const slot of order) clear(trace, slot);
	run(evaluationOn({ graph, values, given }, trace), order);
	return { graph, values, given, replaced: base.replaced, ...trace };
}
