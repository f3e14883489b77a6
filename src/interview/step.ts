import type { Question } from '../sheet/question.ts';
import { type Answer, answerTo, type Sheet, withAnswer } from '../sheet/sheet.ts';
import { effectsOf } from './effects.ts';
import { readEntry } from './entry.ts';
import { asked, cylindersOf, nextOpen, questionAt, type Said, type State } from './state.ts';

/** What a person does, whatever the face. */
export type Event =
	| { readonly do: 'enter'; readonly text: string }
	| { readonly do: 'set'; readonly answer: Answer }
	| { readonly do: 'not-known' }
	| { readonly do: 'later' }
	| { readonly do: 'back' }
	| { readonly do: 'go'; readonly id: string }
	| { readonly do: 'section'; readonly section: string }
	| { readonly do: 'review' }
	| { readonly do: 'note'; readonly text: string }
	| { readonly do: 'clear' };

/** The interview after an event. Pure: the state it is given stays as it was. */
export function step(state: State, event: Event): State {
	const question = questionAt(state);
	switch (event.do) {
		case 'enter':
			return question ? enter(state, question, event.text) : state;
		case 'set':
			return question ? keep(state, question, event.answer, null) : state;
		case 'not-known':
			return question ? keep(state, question, withNote({ known: 'not-known' }, state, question), 'not known') : state;
		case 'later':
			return question ? putOff(state, question) : state;
		case 'back':
			return back(state);
		case 'go':
			return go(state, event.id);
		case 'section':
			return toSection(state, event.section);
		case 'review':
			return { ...state, at: null, trail: trailWith(state), odd: null, said: null };
		case 'note':
			return question ? note(state, question, event.text) : state;
		case 'clear':
			return question ? clear(state, question) : state;
	}
}

function enter(state: State, question: Question, text: string): State {
	const entry = readEntry(question, text, state.sheet.units, cylindersOf(state));
	if (entry.is === 'problem') return { ...state, odd: null, said: { kind: 'problem', text: entry.problem } };
	if (entry.is === 'odd' && !same(state, question, entry.answer)) {
		return {
			...state,
			odd: { id: question.id, answer: entry.answer },
			said: { kind: 'odd', text: `Read as ${entry.echo}. ${entry.problem}` },
		};
	}
	return keep(state, question, withNote(entry.answer, state, question), entry.echo);
}

/** Whether an odd entry is the one that was entered just before. */
function same({ odd }: State, { id }: Question, answer: Answer): boolean {
	return odd?.id === id && JSON.stringify(odd.answer) === JSON.stringify(answer);
}

/** A note stays with its answer when the answer changes. */
function withNote(answer: Answer, { sheet }: State, { id }: Question): Answer {
	const note = answerTo(sheet, id)?.note;
	return note === undefined || answer.note !== undefined ? answer : { ...answer, note };
}

function keep(state: State, question: Question, answer: Answer, echo: string | null): State {
	const sheet = withAnswer(state.sheet, question.id, answer);
	const after = answered(state, sheet);
	const touched = state.fromReview ? touchedBy(state, after) : '';
	const text = [echo ? `Read as ${echo}.` : '', touched].filter(Boolean).join(' ');
	const said: Said | null = text ? { kind: 'read', text } : null;
	if (state.fromReview) return { ...after, at: null, fromReview: false, said };
	return { ...after, at: nextOpen(after, question.id), trail: trailWith(state), said };
}

function answered(state: State, sheet: Sheet): State {
	return { ...state, sheet, effects: effectsOf(state.model, sheet), odd: null };
}

/** Which other answers an edit brought into effect or took out of it. */
function touchedBy(before: State, after: State): string {
	const given = before.model.rulebook.questions.filter(({ id }) => answerTo(before.sheet, id) !== undefined);
	const lost = given.filter(question => before.effects.inEffect(question) && !after.effects.inEffect(question));
	const back = given.filter(question => !before.effects.inEffect(question) && after.effects.inEffect(question));
	const names = (questions: readonly Question[]) => questions.map(({ id }) => id).join(', ');
	return [
		lost.length > 0 ? `Kept, but not in effect now: ${names(lost)}.` : '',
		back.length > 0 ? `In effect again: ${names(back)}.` : '',
	]
		.filter(Boolean)
		.join(' ');
}

function putOff(state: State, { id }: Question): State {
	const after: State = {
		...state,
		later: new Set([...state.later, id]),
		odd: null,
		said: { kind: 'told', text: 'Put off.' },
	};
	if (state.fromReview) return { ...after, at: null, fromReview: false };
	return { ...after, at: nextOpen(after, id), trail: trailWith(state) };
}

function trailWith({ trail, at }: State): string[] {
	return at === null ? [...trail] : [...trail.filter(id => id !== at), at];
}

/** The question before this one: as it was come by, else the one before it in order. */
function back(state: State): State {
	const seen = state.trail.filter(
		id =>
			id !== state.at &&
			state.model.rulebook.questions.some(question => question.id === id && state.effects.inEffect(question)),
	);
	const last = seen.at(-1);
	if (last !== undefined)
		return { ...state, at: last, trail: seen.slice(0, -1), odd: null, fromReview: false, said: null };
	const order = asked(state);
	const place = order.findIndex(({ id }) => id === state.at);
	const before = order[(place < 0 ? order.length : place) - 1];
	if (!before) return { ...state, said: { kind: 'told', text: 'This is the first question.' } };
	return { ...state, at: before.id, odd: null, fromReview: false, said: null };
}

function go(state: State, id: string): State {
	const question = state.model.rulebook.questions.find(other => other.id === id);
	if (!question) return { ...state, said: { kind: 'problem', text: `There is no question ${id}.` } };
	const fromReview = state.at === null;
	return { ...state, at: id, trail: fromReview ? state.trail : trailWith(state), fromReview, odd: null, said: null };
}

function toSection(state: State, section: string): State {
	const own = asked({ ...state, section: null }).filter(question => question.section === section);
	const target = own.find(({ id }) => answerTo(state.sheet, id) === undefined) ?? own[0];
	if (!target) return { ...state, said: { kind: 'told', text: 'Nothing is asked there on this build.' } };
	return { ...state, section: null, at: target.id, trail: trailWith(state), fromReview: false, odd: null, said: null };
}

function note(state: State, { id }: Question, text: string): State {
	const before = answerTo(state.sheet, id) ?? { known: 'not-known' as const };
	const { note: _old, ...bare } = before;
	const answer: Answer = text.trim() === '' ? bare : { ...bare, note: text.trim() };
	return { ...answered(state, withAnswer(state.sheet, id, answer)), said: { kind: 'told', text: 'Noted.' } };
}

function clear(state: State, { id }: Question): State {
	return {
		...answered(state, withAnswer(state.sheet, id, undefined)),
		said: { kind: 'told', text: 'Answer taken away.' },
	};
}
