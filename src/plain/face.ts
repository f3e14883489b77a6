import type { Model } from '../audit/model.ts';
import { leave, resume } from '../interview/session.ts';
import { type Pass, questionAt, type State } from '../interview/state.ts';
import { type Event, step } from '../interview/step.ts';
import { wholeHow } from '../sheet/how.ts';
import type { PlugHalf } from '../sheet/plugs.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { sanitize } from '../text/sanitize.ts';
import { wrap } from '../text/wrap.ts';
import { type LogFace, logByLines } from './log.ts';
import { plugsByLines } from './plugs-mode.ts';
import { promptLines, topicLines } from './prompts.ts';
import { touchedIn, touchedPrompt } from './touched.ts';
import { roomWords, type Window } from './window.ts';

/** What the line face is given: lines in, text out, a place to save. It knows no stream and no disk. */
export interface LineFace {
	readonly lines: AsyncIterable<string>;
	readonly say: (line: string) => void;
	/** What stands before a line to be typed, without a line's end where a person types it. */
	readonly mark: (words: string) => void;
	/** Called after each answer with the sheet as it is then. */
	readonly save: (sheet: Sheet) => void;
	/** How wide a line is, and the window that it is read in, or null: a pipe. */
	readonly width: number;
	readonly window: Window | null;
	readonly logs: LogFace;
}

/** How it ended: after the last question, by asking for the audit, or because no more lines came. */
export interface Ended {
	readonly because: 'done' | 'audit' | 'end-of-input';
	readonly sheet: Sheet;
	/** After a recheck: which of the audits in the sheet to compare with, counted from 1. */
	readonly since: number | null;
}

const help =
	'An answer is a line. ? or help: how to find out; - or not known; > or later; < or back; ! or audit: audit now; # and words: a note; log FILE: read a log; plugs: the plugs, pin by pin.';

/** Runs the interview by lines. Nothing is drawn twice and no escape codes are used: it works on a pipe and for a screen reader. */
export async function runLines(
	model: Model,
	sheet: Sheet,
	pass: Pass | null,
	section: string | null,
	face: LineFace,
): Promise<Ended> {
	const opened = resume(model, sheet, pass, section);
	let { state } = opened;
	const say = (text: string) => wrap(text, face.width, '  ').forEach(face.say);
	const ended = (because: Ended['because']): Ended => ({ because, sheet: state.sheet, since: state.since });
	const last = sheet.audits.at(-1)?.date;
	const cramped = roomWords(face.window);
	if (cramped !== null) say(cramped);
	say(help);
	if (state.said) say(state.said.text);
	if (opened.text) say(`Half typed last time: ${sanitize(opened.text)}`);
	if (last && state.at !== null)
		say(`Last audit ${last}. Changed the car since? A line like: touched fuel, ignition.gap`);
	let topic = ask(state, null, face);
	if (state.at === null) {
		if (!last) return ended('done');
		say(touchedPrompt(last));
	}
	const typed = face.lines[Symbol.asyncIterator]();
	const next = async () => {
		const { value, done } = await typed.next();
		return done ? null : value;
	};
	for (let raw = await next(); raw !== null; raw = await next()) {
		const line = signOf(raw.trim());
		if (line === '!') return ended('audit');
		const question = questionAt(state);
		const [, log] = /^log\s+(\S.*)$/i.exec(line) ?? [];
		if (log !== undefined) {
			const lines = { next, say, mark: face.mark };
			const logged = await logByLines(model, leave(state, ''), log, face.logs, lines);
			if (logged) {
				face.save(logged);
				state = { ...resume(model, logged, null, section).state, since: logged.audits.length || null };
				say('The log is in the sheet.');
			}
		} else if (/^plugs$/i.test(line)) {
			const { vocabulary } = model.rulebook;
			const keep = (plugs: readonly PlugHalf[]) => {
				state = step(state, { do: 'plugs', plugs });
				face.save(leave(state, ''));
			};
			const how = await plugsByLines(state.sheet.plugs ?? [], vocabulary, { next, say: say, mark: face.mark }, keep);
			if (how !== 'end') return ended(how);
		} else if (!question || /^touched\b/i.test(line)) {
			const named = touchedIn(line, model);
			if ('strange' in named) say(`${JSON.stringify(named.strange)} is no section and no answer.`);
			else state = step(state, { do: 'recheck', touched: named.touched });
			if (state.said) say(state.said.text);
		} else if (line === '?') {
			wholeHow(question, state.sheet.units).forEach(say);
			say(help);
			face.mark(`[${question.id}]`);
			continue;
		} else {
			const before = state;
			state = step(state, eventFor(line, state));
			if (state.said) say(state.said.text);
			if (state.sheet !== before.sheet || state.begun !== before.begun) face.save(leave(state, ''));
			if (state.at !== null && state.at === before.at && state.said?.kind !== 'notice') {
				face.mark(`[${state.at}]`);
				continue;
			}
		}
		if (state.at === null && (question || state.since !== null)) return ended('done');
		if (state.at === null && last) say(touchedPrompt(last));
		topic = ask(state, topic, face);
	}
	// Nothing was asked but what was touched: nothing was.
	return ended(state.at === null ? 'done' : 'end-of-input');
}

/** Words that may stand for a sign, alone on their line. */
const signs: Readonly<Record<string, string>> = {
	help: '?',
	'not known': '-',
	unknown: '-',
	later: '>',
	back: '<',
	audit: '!',
};
const signOf = (line: string): string => (Object.hasOwn(signs, line.toLowerCase()) ? signs[line.toLowerCase()]! : line);

function eventFor(line: string, { begun }: State): Event {
	// Among readings that have begun, a dash is one that was not measured.
	if (line === '-' && begun.length === 0) return { do: 'not-known' };
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
	face.mark('');
	return question.topic;
}
