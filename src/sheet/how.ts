import type { Question, UnitSet } from './question.ts';
import { textIn } from './text.ts';

/** How one choice is found out; empty where nothing is said of it. */
export const howOf = ({ howEach }: Question, choice: string, units: UnitSet): string =>
	howEach && Object.hasOwn(howEach, choice) ? textIn(howEach[choice]!, units) : '';

/** How an answer is found out, whole: what holds for all of it, then each choice by its words. */
export const wholeHow = (question: Question, units: UnitSet): string[] => [
	textIn(question.how, units),
	...Object.entries(question.howEach ?? {}).map(
		([id, text]) => `${upper(question.choices[id] ?? id)}: ${textIn(text, units)}`,
	),
];

const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
