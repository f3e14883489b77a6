import type { Vocabulary } from '../plugs/circuit.ts';
import type { PlugHalf } from '../sheet/plugs.ts';
import { sanitize } from '../text/sanitize.ts';
import { plugLine, plugPrompt, startPlugLines } from './plugs.ts';

/** Lines in, words out. */
export interface Lines {
	readonly next: () => Promise<string | null>;
	readonly say: (text: string) => void;
	readonly mark: (words: string) => void;
}

/** The plugs by lines, from the line `plugs` to its `end`; what changes is kept line by line. Gives how it ended. */
export async function plugsByLines(
	plugs: readonly PlugHalf[],
	vocabulary: Vocabulary,
	{ next, say: print, mark }: Lines,
	keep: (plugs: readonly PlugHalf[]) => void,
): Promise<'end' | 'audit' | 'end-of-input'> {
	let now = startPlugLines(plugs);
	// Names and notes are the sheet's own, and may be anything.
	const say = (text: string) => print(sanitize(text));
	const prompt = () => {
		plugPrompt(now).forEach(say);
		mark('');
	};
	prompt();
	for (let line = await next(); line !== null; line = await next()) {
		if (line.trim() === '!') return 'audit';
		const after = plugLine(now, line, vocabulary);
		if (after === null) return 'end';
		if (after.edit.halves !== now.edit.halves) keep(after.edit.halves);
		const elsewhere = after.open !== now.open || (!after.open && after.edit.halves !== now.edit.halves);
		now = after;
		now.say.forEach(say);
		if (elsewhere) prompt();
		else mark(now.open ? '[pins]' : '[plugs]');
	}
	return 'end-of-input';
}
