import type { Outcome } from '../expressions/tree.ts';
import type { Strays } from '../graph/graph.ts';
import { type State, solve } from '../graph/solve.ts';
import { logQuantities } from '../log/all.ts';
import { isPerPull, type LogResults, valuesOf } from '../log/results.ts';
import { givenAnswers } from '../quantities/from-sheet.ts';
import type { Verdict } from '../rulebook/judge.ts';
import type { VerdictWord } from '../rulebook/rulebook.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { QuantityValue } from './audit.ts';
import type { Model } from './model.ts';

type ModelParts = Pick<Model, 'graph' | 'rulebook'>;

/** A sheet solved, with the figures of its newest log; without a log those do not apply. */
export const stateOf = (model: ModelParts, sheet: Sheet, strays?: Strays): LoggedState =>
	stateWithLog(model, sheet, sheet.logs?.at(-1)?.quantities ?? null, strays);

/** A solved sheet with what a log says: its figures stray with their sensors. */
export interface LoggedState extends State {
	readonly logged: LogResults | null;
}

/** A sheet solved with what a log says; `strays`: where a fit puts the inputs; `set`: other values outright. */
export function stateWithLog(
	model: ModelParts,
	sheet: Sheet,
	results: LogResults | null,
	strays?: Strays,
	set: Readonly<Record<string, Outcome>> = {},
): LoggedState {
	const given = givenAnswers(sheet, model.rulebook.questions);
	const state = solve(model.graph, given, new Map(Object.entries(set)), undefined, strays);
	return results === null ? { ...state, logged: null } : withFigures(model, state, results);
}

/**
 * A solved state with the figures of a log in place of those it has: nothing in the graph is made from them. What the log
 * lacks is not known; where an answer would, that is missing.
 */
export function withFigures({ graph, rulebook }: ModelParts, state: State, results: LogResults): LoggedState {
	const asked = new Set(rulebook.questions.map(({ id }) => id));
	const [values, missing, replaced] = [[...state.values], [...state.missing], new Set(state.replaced)];
	for (const [id, value] of valuesOf(results)) {
		const slot = graph.slotOf.get(id)!;
		values[slot] = value;
		replaced.add(slot);
		missing[slot] = missingIn(results, id).filter(name => asked.has(name) && !state.given.has(graph.slotOf.get(name)!));
	}
	return { ...state, values, missing, replaced, logged: results };
}

/** The figures of the newest log as an audit has them: with the sensors' error, and what they lack. */
export function loggedValues({ logs }: Pick<Sheet, 'logs'>): Record<string, QuantityValue> {
	const results = logs?.at(-1)?.quantities;
	if (!results) return {};
	return Object.fromEntries(
		logQuantities.map(({ id }): [string, QuantityValue] => {
			const entry = Object.hasOwn(results, id) ? results[id] : undefined;
			const rest = { bound: null, missing: missingIn(results, id), assumed: [] };
			if (entry !== undefined && !isPerPull(entry)) {
				const { value, unit, low, high } = entry;
				return [id, { value, unit, low, high, ...rest }];
			}
			return [id, { value: entry?.map(({ value }) => value) ?? null, unit: null, low: null, high: null, ...rest }];
		}),
	);
}

/** What a log lacks of a quantity, of any pull. */
function missingIn(results: LogResults, id: string): string[] {
	const entry = Object.hasOwn(results, id) ? results[id] : undefined;
	const figures = entry === undefined ? [] : isPerPull(entry) ? entry : [entry];
	return [...new Set(figures.flatMap(({ missing }) => missing))].sort();
}

/** What an older log found and is still open: every verdict of a rule that failed then, and what it was judged on. */
export interface StillOpen {
	readonly state: LoggedState;
	readonly verdicts: readonly Verdict[];
}

/**
 * What older logs found wrong and no later one has shown to be right: a log that lacks the channel closes nothing.
 *
 * @param verdicts those of the newest log
 */
export function stillOpen(model: Model, sheet: Sheet, verdicts: readonly Verdict[]): StillOpen[] {
	const older = (sheet.logs ?? []).slice(0, -1);
	if (older.length === 0) return [];
	const undecided = new Set(verdicts.filter(({ rule }) => rule.section === 'log').map(({ rule }) => rule));
	for (const { rule, verdict } of verdicts) if (decides(verdict)) undecided.delete(rule);
	return older.reverse().flatMap(({ quantities }): StillOpen[] => {
		if (undecided.size === 0) return [];
		const state = stateWithLog(model, sheet, quantities);
		const judged = model.judge.judge(state).filter(({ rule }) => undecided.has(rule));
		const failed = new Set(judged.filter(({ verdict }) => verdict === 'fails').map(({ rule }) => rule));
		for (const { rule, verdict } of judged) if (decides(verdict)) undecided.delete(rule);
		return failed.size === 0 ? [] : [{ state, verdicts: judged.filter(({ rule }) => failed.has(rule)) }];
	});
}

const decides = (verdict: VerdictWord): boolean => verdict === 'fails' || verdict === 'holds';
