import { namesIn } from '../expressions/tree.ts';
import { formsOf, type Text } from '../sheet/text.ts';
import type { Rule } from './rulebook.ts';

/** Every name that a rule's judgment reads: its expressions, its thresholds, the answer it goes through part by part. */
export function namesRead({ applies, holds, thresholds, each }: Rule): Set<string> {
	const names = namesIn(holds, applies ? namesIn(applies) : new Set());
	for (const { value } of Object.values(thresholds)) namesIn(value, names);
	if (each) names.add(each.answer);
	return names;
}

/** The names that a text has in braces. */
export function namesInWords(text: Text): string[] {
	return formsOf(text).flatMap(form => [...form.matchAll(/\{([^{}]*)\}/g)].map(([, name]) => name!));
}
