import type { Model } from '../audit/model.ts';

/** What a line names as touched: sections and answers, with commas between; or the word that is neither. */
export function touchedIn(
	line: string,
	{ rulebook }: Model,
): { readonly touched: string[] } | { readonly strange: string } {
	const words = line
		.replace(/^touched\b/i, '')
		.split(',')
		.map(word => word.trim().toLowerCase())
		.filter(word => word !== '' && word !== '-' && word !== 'nothing');
	const known = (word: string) =>
		rulebook.sections.some(({ id }) => id === word) || rulebook.questions.some(({ id }) => id === word);
	const strange = words.find(word => !known(word));
	return strange === undefined ? { touched: words } : { strange };
}

/** Asks what was touched, where every question is answered already. */
export const touchedPrompt = (date: string): string =>
	`[recheck] What did you touch since the audit of ${date}? Sections or answers with commas, as fuel, ignition.gap - or nothing, or log FILE`;
