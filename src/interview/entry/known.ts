import type { Question } from '../../sheet/question.ts';
import type { KnownBy } from '../../sheet/sheet.ts';

const words: readonly KnownBy[] = ['measured', 'paperwork', 'estimate'];

/** How a number is known, as the last word of the line or the start of it: `3.78 in measured`, `3.78 in meas`. */
export function howKnown(text: string, question: Question): { line: string; known: KnownBy | null } {
	if (question.of.length === 0) return { line: text, known: null };
	const [, line, word] = /^(.*?)[\s,]+([a-z]+)$/is.exec(text) ?? [];
	const known = words.find(other => word && word.length >= 3 && other.startsWith(word.toLowerCase()));
	return known && line ? { line: line.trim(), known } : { line: text, known: null };
}
