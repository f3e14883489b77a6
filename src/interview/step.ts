import type { PlugHalf } from '../sheet/plugs.ts';
import type { Answer } from '../sheet/sheet.ts';
import { formatAnswer } from '../wording/format.ts';
import { clear, enter, keep, note, putOff, readAs } from './answer.ts';
import { back, go, toReview, toSection } from './navigation.ts';
import { beginRecheck } from './recheck.ts';
import { questionAt, type State } from './state.ts';

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
	| { readonly do: 'clear' }
	/** The last piece of a list that is typed one by one is taken back. */
	| { readonly do: 'take-back' }
	/** What was typed is being typed anew: whatever was in doubt about it is not any more. */
	| { readonly do: 'retype' }
	/** The halves of plugs after an edit. */
	| { readonly do: 'plugs'; readonly plugs: readonly PlugHalf[] }
	/** Sections or answers that were touched since the last audit. */
	| { readonly do: 'recheck'; readonly touched: readonly string[] };

/** The interview after an event. Pure: the state it is given stays as it was. */
export function step(state: State, event: Event): State {
	const after = stepped(state, event);
	return after.at === state.at || after.begun.length === 0 ? after : { ...after, begun: [] };
}

function stepped(state: State, event: Event): State {
	switch (event.do) {
		case 'back':
			return back(state);
		case 'go':
			return go(state, event.id);
		case 'section':
			return toSection(state, event.section);
		case 'review':
			return toReview(state);
		case 'plugs':
			return withPlugs(state, event.plugs);
		case 'recheck':
			return beginRecheck(state, event.touched);
		case 'take-back':
			return { ...state, begun: state.begun.slice(0, -1), doubt: null, said: null };
		case 'retype':
			return state.doubt || state.said?.kind === 'problem' || state.said?.kind === 'odd'
				? { ...state, doubt: null, said: null }
				: state;
	}
	const question = questionAt(state);
	if (!question) return state;
	switch (event.do) {
		case 'enter':
			return enter(state, question, event.text);
		case 'set':
			return keep(state, question, event.answer, readAs(formatAnswer(question, event.answer, state.sheet.units)));
		case 'not-known':
			return keep(state, question, { known: 'not-known' }, 'Read as not known.');
		case 'later':
			return putOff(state, question);
		case 'note':
			return note(state, question, event.text);
		case 'clear':
			return clear(state, question);
	}
}

/** No halves at all are no plugs: then no rule about them applies. */
function withPlugs(state: State, plugs: readonly PlugHalf[]): State {
	const { plugs: _, ...rest } = state.sheet;
	return { ...state, sheet: plugs.length > 0 ? { ...rest, plugs } : rest };
}
