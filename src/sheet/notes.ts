import { typable } from '../text/sanitize.ts';
import { isObject } from './fault.ts';
import { answerTo, type Sheet } from './sheet.ts';

/** Notes to questions that have no answer yet, by question: a key of the sheet's top, left aside where a hand has spoilt it. */
export function waitingNotes({ notes }: Sheet): Readonly<Record<string, string>> {
	if (!isObject(notes)) return {};
	return Object.fromEntries(
		Object.entries(notes).flatMap(([id, note]) => (typeof note === 'string' ? [[id, typable(note)]] : [])),
	);
}

/** The note to a question: with its answer, or waiting for one; empty when there is none. */
export const noteOn = (sheet: Sheet, id: string): string => {
	const waiting = waitingNotes(sheet);
	return answerTo(sheet, id)?.note ?? (Object.hasOwn(waiting, id) ? waiting[id]! : '');
};

/** The sheet with a note that waits for an answer; an empty one is taken away. */
export function withWaitingNote(sheet: Sheet, id: string, note: string): Sheet {
	const { notes: _old, ...rest } = sheet;
	const { [id]: was, ...others } = waitingNotes(sheet);
	if ((was ?? '') === note) return sheet;
	const notes = note === '' ? others : { ...others, [id]: note };
	return (Object.keys(notes).length > 0 ? { ...rest, notes } : rest) as Sheet;
}
