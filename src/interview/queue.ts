import type { Question } from '../sheet/question.ts';
import { isAnswered, questionNamed, type State } from './state.ts';

/** Every question of this pass that makes sense now, in order. A section asked for by name is asked whole in a full pass. */
export function asked({ model, relevance, pass, section }: State): Question[] {
	return model.rulebook.questions.filter(
		question =>
			(section === null || question.section === section) &&
			relevance.inEffect(question) &&
			(pass === 'full' || relevance.quick(question)),
	);
}

/** What is still to be asked, in the order in which it is asked: neither dealt with nor put off. */
export function open(state: State): Question[] {
	const due = state.recheck
		? state.recheck.todo.flatMap(id => questionNamed(state, id) ?? []).filter(state.relevance.inEffect)
		: asked(state).filter(question => !isAnswered(state, question));
	return due.filter(({ id }) => !state.later.has(id));
}

/** The next open one behind a question; then whatever was left open before it. A recheck has its own order. */
export function nextOpen(state: State, from: string): string | null {
	const order = state.model.rulebook.questions.map(({ id }) => id);
	const place = order.indexOf(from);
	const others = open(state).filter(({ id }) => id !== from);
	const next = state.recheck ? others[0] : (others.find(({ id }) => order.indexOf(id) > place) ?? others[0]);
	return next?.id ?? null;
}

/** Where in the pass, or in the recheck: how many of how many are dealt with. */
export function progress(state: State): { readonly done: number; readonly of: number } {
	if (state.recheck) return { done: state.recheck.of - state.recheck.todo.length, of: state.recheck.of };
	const all = asked(state);
	return { done: all.filter(question => isAnswered(state, question)).length, of: all.length };
}
