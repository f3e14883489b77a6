import { answerTo } from '../sheet/sheet.ts';
import { asked } from './queue.ts';
import { questionNamed, type State } from './state.ts';

/** The way back from the next question: each once, the one in sight last. */
export function trailWith({ trail, at }: State): string[] {
	return at === null ? [...trail] : [...trail.filter(id => id !== at), at];
}

const arriving = { doubt: null, fromReview: false, said: null } as const;

/** The question before this one: as it was come by, else the one before it in order. */
export function back(state: State): State {
	const seen = state.trail.filter(id => {
		const question = questionNamed(state, id);
		return id !== state.at && question && state.relevance.inEffect(question);
	});
	const last = seen.at(-1);
	if (last !== undefined) return { ...state, ...arriving, at: last, trail: seen.slice(0, -1) };
	const order = asked(state);
	const place = order.findIndex(({ id }) => id === state.at);
	const before = order[(place < 0 ? order.length : place) - 1];
	if (!before) return { ...state, said: { kind: 'notice', text: 'This is the first question.' } };
	return { ...state, ...arriving, at: before.id };
}

/** Any question, by its id. */
export function go(state: State, id: string): State {
	if (!questionNamed(state, id)) return { ...state, said: { kind: 'problem', text: `There is no question ${id}.` } };
	const fromReview = state.at === null;
	return { ...state, ...arriving, at: id, trail: fromReview ? state.trail : trailWith(state), fromReview };
}

/** A section, at its first open question. */
export function toSection(state: State, section: string): State {
	const own = asked({ ...state, section: null }).filter(question => question.section === section);
	const target = own.find(({ id }) => answerTo(state.sheet, id) === undefined) ?? own[0];
	if (!target) return { ...state, said: { kind: 'notice', text: 'Nothing is asked there on this build.' } };
	return { ...state, ...arriving, section: null, at: target.id, trail: trailWith(state) };
}

/** All answers, out of the questions. */
export function toReview(state: State): State {
	return { ...state, at: null, trail: trailWith(state), doubt: null, said: null };
}
