import { namesInWords } from '../reads.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';

/** Notes every {name} of a field's words that is none. */
export function checkWords(fields: Fields, key: string, texts: string | readonly string[], names: Names): void {
	for (const name of [texts].flat().flatMap(namesInWords)) {
		if (!names.has(name))
			fields.report(key, `${key}: ${quote(`{${name}}`)} is no answer, no quantity and no threshold of this rule`);
	}
}

/** Notes every {name} of words that are printed as they are. */
export function refuseNames(fields: Fields, key: string, text: string): void {
	for (const name of namesInWords(text))
		fields.report(key, `${key}: ${quote(`{${name}}`)} is not filled in here: say it in words`);
}
