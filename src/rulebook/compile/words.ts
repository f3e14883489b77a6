import type { UnitSet } from '../../sheet/question.ts';
import type { Text } from '../../sheet/text.ts';
import { namesInWords } from '../reads.ts';
import { type Fields, quote } from './fields.ts';
import { figured, unmarkedFigure } from './figures.ts';
import type { Names } from './names.ts';

/** A text whose figures with a unit are marked, or `{us: ..., metric: ...}` where a mark will not do. */
export function readText(fields: Fields, key: string, need = true): Text {
	if (!fields.isMapping(key)) return marked(fields, key, fields.text(key, need));
	const inner = fields.inner(key)!;
	const form = (set: UnitSet) => inner.text(set);
	const text = { us: form('us'), metric: form('metric') };
	inner.refuseRest();
	return text;
}

/** A text that says the same of every car: figures marked, no names filled in. */
export function printed(fields: Fields, key: string): Text {
	const text = readText(fields, key);
	refuseNames(fields, key, text);
	return text;
}

/** A list of such texts. */
export const readTexts = (fields: Fields, key: string, need = true): Text[] =>
	fields.texts(key, need).map(text => marked(fields, key, text));

/** A short text that is the same for every reader: it has no figure with a unit. */
export function readPlain(fields: Fields, key: string, need = true): string {
	const text = fields.text(key, need);
	const found = text.includes('{=') ? '{=...}' : unmarkedFigure(text);
	if (found) fields.advise(key, `${key}: ${quote(found)} is a figure with a unit, which has no place in a ${key}`);
	return text;
}

function marked(fields: Fields, key: string, text: string): Text {
	const found = unmarkedFigure(text);
	if (found)
		fields.advise(key, `${key}: ${quote(found)} is in one unit set only: write {=4 in} or {=4 in|100 mm} for it`);
	return figured(text, message => fields.report(key, `${key}: ${message}`));
}

/** Notes every {name} of a field's words that is none. */
export function checkWords(fields: Fields, key: string, texts: Text | readonly Text[], names: Names): void {
	for (const name of namesOf(texts)) {
		if (!names.has(name))
			fields.report(key, `${key}: ${quote(`{${name}}`)} is no answer, no quantity and no threshold of this rule`);
	}
}

/** Notes every {name} of words that are printed as they are. */
export function refuseNames(fields: Fields, key: string, text: Text): void {
	for (const name of namesOf(text))
		fields.report(key, `${key}: ${quote(`{${name}}`)} is not filled in here: say it in words`);
}

const isList = (texts: Text | readonly Text[]): texts is readonly Text[] => Array.isArray(texts);

const namesOf = (texts: Text | readonly Text[]): Set<string> =>
	new Set((isList(texts) ? texts : [texts]).flatMap(namesInWords));
