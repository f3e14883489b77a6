import type { Part } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';
import { readPlain } from './words.ts';

/** The parts that rules name (rules/parts.yaml), each once, whatever rules ask for it. */
export function readParts(root: Fields): Part[] {
	const outer = root.inner('parts');
	const ids = outer?.keys() ?? [];
	return ids.flatMap((id): Part[] => {
		// Most parts need their name alone.
		if (!outer!.isMapping(id)) return [{ id, title: readPlain(outer!, id), plural: null, covers: [] }];
		const inner = outer!.inner(id)!;
		const part = {
			id,
			title: readPlain(inner, 'title'),
			plural: inner.has('plural') ? inner.text('plural') : null,
			covers: inner.texts('covers', false),
		};
		for (const other of part.covers)
			if (!ids.includes(other) || other === id) inner.report('covers', `covers: ${quote(other)} is no other part`);
		inner.refuseRest();
		return [part];
	});
}

/** The parts that a rule asks for, by their ids. A pack may name its own in plain words. */
export function readPartsOf(fields: Fields, known: ReadonlySet<string>, pack: boolean): string[] {
	const parts = fields.texts('parts', false);
	for (const part of pack ? [] : parts)
		if (!known.has(part)) fields.report('parts', `parts: ${quote(part)} is not in rules/parts.yaml: add it there`);
	return parts;
}
