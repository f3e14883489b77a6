import { noteOn, withWaitingNote } from '../sheet/notes.ts';
import type { Question } from '../sheet/question.ts';
import { type Answer, answerTo, type Sheet, withAnswer } from '../sheet/sheet.ts';
import { typable } from '../text/sanitize.ts';
import { formatAnswer } from '../wording/format.ts';
import { contradicted } from './contradictions.ts';
import { misfits } from './cylinders.ts';
import { readEntry } from './entry/entry.ts';
import { pieceOf } from './entry/one-by-one.ts';
import { trailWith } from './navigation.ts';
import { aboutWords, nextOpen, roundLeft } from './queue.ts';
import { asksAnew, dealtWith } from './recheck.ts';
import { relevanceOf } from './relevance.ts';
import { cylindersOf, type Said, type State } from './state.ts';

/** A typed line. Nothing typed keeps what stands, where something stands. */
export function enter(state: State, question: Question, text: string): State {
	const stands = answerTo(state.sheet, question.id);
	const { doubt, begun } = state;
	const cylinders = cylindersOf(state.sheet);
	if (doubt?.is === 'offer' && doubt.id === question.id && ['', doubt.typed].includes(text.trim()))
		return enter({ ...state, doubt: null }, question, doubt.way.text);
	const way = doubt?.is === 'two-ways' ? doubt.ways[['a', 'b'].indexOf(text.trim().toLowerCase())] : undefined;
	// A line that reads two ways, written so that it reads one way, is the whole of it.
	if (way) return enter({ ...state, doubt: null, begun: [] }, question, way.text);
	if (begun.length === 0 && text.trim() === '' && stands && !asksAnew(state, question.id)) {
		const words = stands.value === undefined ? 'not known' : formatAnswer(question, stands, state.sheet.units);
		return keep(state, question, stands, `Kept: ${words}.`);
	}
	const piece = pieceOf(question, begun, text, state.sheet.units, cylinders);
	if (piece.is === 'problem') return { ...state, doubt: null, said: { kind: 'problem', text: piece.problem } };
	if (piece.is === 'begun')
		return {
			...state,
			begun: [...begun, text.trim().replace(/[\s,|]+$/, '')],
			said: { kind: 'read', text: piece.prompt },
		};
	const entry = readEntry(question, piece.text, state.sheet.units, cylinders);
	switch (entry.is) {
		case 'problem':
			return { ...state, doubt: null, said: { kind: 'problem', text: entry.problem } };
		case 'offer': {
			const said: Said = { kind: 'odd', text: `Is ${entry.way.echo} meant? Enter takes it; or type it anew.` };
			return { ...state, doubt: { is: 'offer', id: question.id, typed: text.trim(), way: entry.way }, said };
		}
		case 'two-ways': {
			const [a, b] = entry.ways;
			const said: Said = { kind: 'odd', text: `That comma can be read two ways: a) ${a.echo}; b) ${b.echo}. Which?` };
			return { ...state, doubt: { is: 'two-ways', ways: entry.ways }, said };
		}
		case 'odd': {
			if (sameAgain(state, question, entry.answer)) return keep(state, question, entry.answer, readAs(entry.echo));
			const said: Said = { kind: 'odd', text: `Read as ${entry.echo}. ${entry.problem}` };
			return { ...state, doubt: { is: 'odd', id: question.id, answer: entry.answer }, said };
		}
		case 'answer':
			return keep(state, question, entry.answer, readAs(entry.echo));
	}
}

/** What is said after an entry: how it was understood. */
export const readAs = (echo: string) => `Read as ${echo}.`;

/** Whether an odd entry is the one that was entered just before. */
function sameAgain({ doubt }: State, { id }: Question, answer: Answer): boolean {
	return doubt?.is === 'odd' && doubt.id === id && JSON.stringify(doubt.answer) === JSON.stringify(answer);
}

/** Keeps an answer and goes on to the next question, or back to the review it was opened from. */
export function keep(state: State, question: Question, answer: Answer, words: string): State {
	const noted = withNote(answer, state, question);
	const sheet = withWaitingNote(withAnswer(state.sheet, question.id, noted), question.id, '');
	const against = sameAgain(state, question, answer) ? null : contradicted(state, question.id, sheet);
	if (against !== null) {
		const text = `${words} ${against} Enter it once more to keep it; else change one of them.`;
		return { ...state, doubt: { is: 'odd', id: question.id, answer }, said: { kind: 'odd', text } };
	}
	const after = changed(state, question.id, sheet);
	const text = [words, after.said?.text].filter(Boolean).join(' ');
	return onward(state, question.id, { ...after, said: text ? { kind: 'read', text } : null });
}

/** Puts a question off for this session. */
export function putOff(state: State, { id }: Question): State {
	const later = new Set([...state.later, id]);
	return onward(state, id, { ...state, later, doubt: null, said: { kind: 'notice', text: 'Left for later.' } });
}

/** Where it goes on from a question that is dealt with. */
function onward(before: State, id: string, after: State): State {
	if (before.fromReview) return { ...after, at: null, fromReview: false };
	const at = nextOpen(after, id);
	// The last question of a recheck is followed by the audit, whatever else was never asked.
	const next = { ...after, at, recheck: at === null ? null : after.recheck, trail: trailWith(before) };
	return roundLeft(before)?.second === false && roundLeft(next)?.second ? toSecondRound(next) : next;
}

/** Says that the first round is over, and what the second one takes. */
function toSecondRound(state: State): State {
	const { count, seconds } = roundLeft(state)!;
	const text = `The first round is done. The second, with the gauge in hand, place by place: ${count} questions, ${aboutWords(seconds)}, the tests themselves in it. The audit can be had now.`;
	return { ...state, said: { kind: 'notice', text: [state.said?.text, text].filter(Boolean).join(' ') } };
}

/** A note to the answer. Before there is one it waits for it, and the question stays open: a note is no answer. */
export function note(state: State, { id }: Question, text: string): State {
	const words = typable(text.trim());
	const said = { kind: 'notice', text: 'Note saved.' } as const;
	const answer = answerTo(state.sheet, id);
	if (!answer) return { ...state, sheet: withWaitingNote(state.sheet, id, words), said };
	const { note: _old, ...bare } = answer;
	const noted: Answer = words === '' ? bare : { ...bare, note: words };
	return { ...changed(state, id, withAnswer(state.sheet, id, noted)), said };
}

/** Takes an answer away: the question is open again. */
export function clear(state: State, { id }: Question): State {
	return {
		...changed(state, id, withAnswer(state.sheet, id, undefined)),
		said: { kind: 'notice', text: 'Answer taken away.' },
	};
}

/** A note stays with its answer when the answer changes. */
function withNote(answer: Answer, { sheet }: State, { id }: Question): Answer {
	const stands = noteOn(sheet, id);
	return stands === '' || answer.note !== undefined ? answer : { ...answer, note: stands };
}

/** The state with another sheet: what is in effect now, and in words which other answers that touched. */
function changed(state: State, id: string, sheet: Sheet): State {
	const fitting = id === 'engine.cylinders' ? misfits(state.model.rulebook.questions, sheet) : { sheet, message: '' };
	const aside = state.aside?.id === id ? null : state.aside;
	const relevance = relevanceOf(state.model, fitting.sheet);
	const after = { ...state, sheet: fitting.sheet, relevance, doubt: null, aside };
	const text = [fitting.message, touchedBy(state, after)].filter(Boolean).join(' ');
	return { ...after, recheck: dealtWith(state, after, id), said: text ? { kind: 'read', text } : null };
}

/** Which other answers an answer brought into effect or took out of it. */
function touchedBy(before: State, after: State): string {
	const given = before.model.rulebook.questions.filter(({ id }) => answerTo(before.sheet, id) !== undefined);
	const lost = given.filter(question => before.relevance.inEffect(question) && !after.relevance.inEffect(question));
	const back = given.filter(question => !before.relevance.inEffect(question) && after.relevance.inEffect(question));
	const names = (questions: readonly Question[]) => questions.map(({ id }) => id).join(', ');
	return [
		lost.length > 0 ? `Kept, but not in effect now: ${names(lost)}.` : '',
		back.length > 0 ? `In effect again: ${names(back)}.` : '',
	]
		.filter(Boolean)
		.join(' ');
}
