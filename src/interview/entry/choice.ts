import { type Question, standAlone } from '../../sheet/question.ts';
import type { Reader } from './reader.ts';

/** A choice by its number, its name, its words, or the start of one of them. */
function choiceIn(question: Question, text: string): string | null {
	const ids = Object.keys(question.choices);
	if (/^\d+$/.test(text)) return ids[Number(text) - 1] ?? null;
	const wanted = text.toLowerCase();
	const forms = (id: string) => [id, question.choices[id]!.toLowerCase(), id.replaceAll('-', ' ')];
	const exact = ids.find(id => forms(id).includes(wanted));
	if (exact) return exact;
	const starts = ids.filter(id => forms(id).some(form => form.startsWith(wanted)));
	return starts.length === 1 ? starts[0]! : null;
}

export const readChoice: Reader = (question, text) => {
	const choice = choiceIn(question, text);
	return choice
		? { answer: { value: choice } }
		: { problem: `${JSON.stringify(text)} is none of them: type a number or a name.` };
};

/** Those that apply, with commas between; `none` is none of them. */
export const readSeveral: Reader = (question, text) => {
	const alone = Object.keys(question.choices).find(id => standAlone.includes(id));
	if (/^none\b/i.test(text)) return { answer: { value: alone ? [alone] : [] } };
	const words = text.includes(',') ? text.split(',') : /^[\d\s]+$/.test(text) ? text.split(/\s+/) : [text];
	const chosen: string[] = [];
	for (const word of words.map(part => part.trim()).filter(part => part !== '')) {
		const choice = choiceIn(question, word);
		if (!choice)
			return { problem: `${JSON.stringify(word)} is none of them: type numbers or names, with commas between.` };
		if (!chosen.includes(choice)) chosen.push(choice);
	}
	return { answer: { value: chosen } };
};
