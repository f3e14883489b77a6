import type { Model } from '../audit/model.ts';
import { start } from '../interview/sitting.ts';
import { type Pass, questionAt, type State } from '../interview/state.ts';
import { type Event, step } from '../interview/step.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { promptLines, topicLines } from './prompts.ts';
import { wrap } from './wrap.ts';

/** What the line face is given: lines in, text out, a place to save. It knows no stream and no disk. */
export interface LineFace {
	readonly lines: AsyncIterable<string>;
	readonly say: (line: string) => void;
	/** Called after each answer with the sheet as it is then. */
	readonly save: (sheet: Sheet) => void;
	readonly width: number;
}

/** How it ended: after the last question, by asking for the audit, or because no more lines came. */
export type Ended = { readonly because: 'done' | 'audit' | 'end-of-input'; readonly sheet: Sheet };

const help = 'An answer is a line. ? how to find out, - not known, > later, < back, ! audit now, # and words: a note.';

/** Runs the interview by lines. Nothing is drawn twice and no escape codes are used: it works on a pipe and for a screen reader. */
export async function runLines(
	model: Model,
	sheet: Sheet,
	pass: Pass,
	section: string | null,
	face: LineFace,
): Promise<Ended> {
	let state = start(model, sheet, pass, section);
	const tell = (text: string) => wrap(text, face.width, '  ').forEach(face.say);
	tell(help);
	if (state.said) tell(state.said.text);
	let topic = ask(state, null, face);
	if (state.at === null) return { because: 'done', sheet: state.sheet };
	for await (const raw of face.lines) {
		const line = raw.trim();
		if (line === '!') return { because: 'audit', sheet: state.sheet };
		const question = questionAt(state)!;
		if (line === '?') {
			tell(question.how);
			tell(help);
			topic = ask(state, topic, face);
			continue;
		}
		const before = state;
		state = step(state, eventFor(line));
		if (state.said) tell(state.said.text);
		if (state.sheet !== before.sheet) face.save(state.sheet);
		if (state.at === null) return { because: 'done', sheet: state.sheet };
		topic = ask(state, topic, face);
	}
	return { because: 'end-of-input', sheet: state.sheet };
}

function eventFor(line: string): Event {
	if (line === '-') return { do: 'not-known' };
	if (line === '<') return { do: 'back' };
	if (line === '>') return { do: 'later' };
	if (line.startsWith('#')) return { do: 'note', text: line.slice(1) };
	return { do: 'enter', text: line };
}

/** Asks the question in sight, under its topic when that is new. Gives the topic back. */
function ask(state: State, topic: string | null, face: LineFace): string | null {
	const question = questionAt(state);
	if (!question) return topic;
	if (question.topic !== topic) topicLines(state, question, face.width).forEach(face.say);
	promptLines(state, question, face.width).forEach(face.say);
	return question.topic;
}
