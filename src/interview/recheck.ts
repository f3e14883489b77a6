import { stateOf } from '../audit/logged.ts';
import type { Model } from '../audit/model.ts';
import { isSerious } from '../audit/stages.ts';
import { reach } from '../graph/paths.ts';
import type { Question } from '../sheet/question.ts';
import { answerTo } from '../sheet/sheet.ts';
import { isAnswered, type Recheck, type State } from './state.ts';

/** What is ticked by looking at the whole car, since the last change: any change asks for it anew. */
const walkRound: readonly string[] = ['build.checked_before_fire', 'build.checked_before_move'];

/** Whether the answer that stands may not simply be kept: it was true of the car before it was touched. */
export const asksAnew = ({ recheck }: State, id: string): boolean =>
	recheck?.todo.includes(id) === true && walkRound.includes(id);

/**
 * Begins a recheck. `touched` are sections or answers. Asked are those, what depends on them, and then what the open
 * lines of the audit still wait for; nothing else. Audits from here on are compared with the last one in the sheet.
 */
export function beginRecheck(state: State, touched: readonly string[]): State {
	const { questions } = state.model.rulebook;
	const named = questions.filter(({ id, section }) => touched.includes(id) || touched.includes(section));
	const affected = dependents(state.model, named).filter(question => isAnswered(state, question));
	const open = waitedFor(state).filter(question => !affected.includes(question));
	const todo = [...affected, ...open].filter(state.relevance.inEffect).map(({ id }) => id);
	return {
		...state,
		at: todo[0] ?? null,
		section: null,
		trail: [],
		later: new Set(),
		doubt: null,
		fromReview: false,
		recheck: todo.length > 0 ? { todo, of: todo.length } : null,
		since: state.sheet.audits.length > 0 ? state.sheet.audits.length : null,
		said: todo.length > 0 ? { kind: 'notice', text: `${todo.length} to go through. Enter keeps what stands.` } : null,
	};
}

/**
 * What was touched, with the rest of its topic; what was read off a gauge that feels it; and, after any change at all,
 * what is ticked by walking round the car.
 */
function dependents({ graph, rulebook }: Model, touched: readonly Question[]): Question[] {
	if (touched.length === 0) return [];
	const topics = new Set(touched.map(({ topic }) => topic));
	const moved = reach(
		touched.map(({ id }) => graph.slotOf.get(id)!),
		slot => graph.readers[slot]!,
	);
	const moves = (id: string | null) => id !== null && moved.has(graph.slotOf.get(id)!);
	const gauges = rulebook.readings.filter(({ of, most }) => moves(of) || moves(most)).map(({ answer }) => answer);
	return rulebook.questions.filter(
		({ id, topic }) => topics.has(topic) || gauges.includes(id) || walkRound.includes(id),
	);
}

/** What the lines that stand in the way wait for: never answered, or not known last time. */
function waitedFor({ model, sheet }: State): Question[] {
	const { rulebook, judge } = model;
	const verdicts = judge.judge(stateOf(model, sheet));
	const missing = new Set(
		verdicts
			.filter(({ verdict, rule }) => verdict === 'cannot-tell' && isSerious(rule))
			.flatMap(verdict => verdict.missing),
	);
	return rulebook.questions.filter(({ id }) => missing.has(id) && answerTo(sheet, id)?.value === undefined);
}

/** The recheck after a question was dealt with: without it, and with what the answer brought into effect. */
export function dealtWith(before: State, after: State, id: string): Recheck | null {
	if (!before.recheck) return null;
	const fresh = after.model.rulebook.questions.filter(
		question =>
			!before.relevance.inEffect(question) &&
			after.relevance.inEffect(question) &&
			!isAnswered(after, question) &&
			(after.pass === 'full' || after.relevance.quick(question)),
	);
	const todo = before.recheck.todo.filter(other => other !== id);
	const added = fresh.map(question => question.id).filter(other => other !== id && !todo.includes(other));
	return { todo: [...added, ...todo], of: before.recheck.of + added.length };
}
