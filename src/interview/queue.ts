import { accesses } from '../sheet/access.ts';
import type { Question } from '../sheet/question.ts';
import { answerTo } from '../sheet/sheet.ts';
import { isSecondRound, personSeconds } from './person-time.ts';
import { cylindersOf, isAnswered, questionNamed, type State } from './state.ts';

/** Every question of this pass that makes sense now, in order. A section asked for by name is asked whole in a full pass. */
export function asked(state: State): Question[] {
	const { relevance, pass, section } = state;
	return inOrder(state).filter(
		question =>
			(section === null || question.section === section) &&
			relevance.inEffect(question) &&
			!isIdle(state, question) &&
			(pass === 'full' || relevance.quick(question)),
	);
}

/** A figure's own conditions, of a figure that is not known: nothing to ask. */
const isIdle = ({ sheet }: State, { id, follows }: Question): boolean =>
	follows !== null && answerTo(sheet, follows)?.known === 'not-known' && answerTo(sheet, id) === undefined;

/**
 * The order in which a pass asks: that of the rulebook. A quick one first asks what is known, on paper or under the open hood,
 * then what needs a gauge in the hand or a place that one has to crawl to, a place at a time.
 */
function inOrder({ model, pass }: Pick<State, 'model' | 'pass'>): readonly Question[] {
	const { questions } = model.rulebook;
	if (pass === 'full') return questions;
	let order = quickOrders.get(questions);
	if (!order) {
		const place = ({ access }: Question) => accesses.indexOf(access);
		const second = questions.filter(isSecondRound).sort((a, b) => place(a) - place(b));
		order = [...questions.filter(question => !isSecondRound(question)), ...second];
		quickOrders.set(questions, order);
	}
	return order;
}

const quickOrders = new WeakMap<readonly Question[], readonly Question[]>();

/** What is left of the round under way: how many questions, and how long a person takes over them, s. Null outside a quick pass, and at its end. */
export function roundLeft(
	state: State,
): { readonly second: boolean; readonly count: number; readonly seconds: number } | null {
	if (state.pass !== 'quick' || state.recheck || state.section !== null) return null;
	const due = open(state);
	const first = due.filter(question => !isSecondRound(question));
	const at = state.at === null ? null : questionNamed(state, state.at);
	const second = first.length === 0 || (at !== null && isSecondRound(at));
	const left = second ? due.filter(isSecondRound) : first;
	if (left.length === 0) return null;
	const cylinders = cylindersOf(state.sheet);
	const seconds = left.reduce((sum, question) => sum + personSeconds(question, state.sheet.units, cylinders), 0);
	return { second, count: left.length, seconds };
}

/** A time in words, as far as it can be known beforehand: `about 9 minutes`; `9 min` where there is little room. */
export function aboutWords(seconds: number, short = false): string {
	const minutes = Math.ceil(seconds / 60);
	if (minutes >= 100) return short ? `${Math.round(minutes / 60)} h` : `about ${Math.round(minutes / 60)} hours`;
	return short ? `${minutes} min` : `about ${minutes} minute${minutes === 1 ? '' : 's'}`;
}

/** What is still to be asked, in the order in which it is asked: neither dealt with nor put off. */
export function open(state: State): Question[] {
	const due = state.recheck
		? state.recheck.todo
				.flatMap(id => questionNamed(state, id) ?? [])
				.filter(question => state.relevance.inEffect(question) && !isIdle(state, question))
		: asked(state).filter(question => !isAnswered(state, question));
	return due.filter(({ id }) => !state.later.has(id));
}

/** The next open one behind a question; then whatever was left open before it. A recheck has its own order. */
export function nextOpen(state: State, from: string): string | null {
	const order = inOrder(state).map(({ id }) => id);
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
