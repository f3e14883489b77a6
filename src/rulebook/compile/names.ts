import { perPull } from '../../log/quantities.ts';
import type { AnyQuantity, QuantityKind } from '../../quantities/quantity.ts';
import { isList, type Question } from '../../sheet/question.ts';
import type { Kind } from '../../units/kinds.ts';

/** What an expression or a name in one is: decides what it may be compared with. */
export type Type =
	| { readonly is: 'number'; readonly kind: Kind }
	| { readonly is: 'text'; readonly choices: readonly string[] | null; readonly written?: true }
	| { readonly is: 'yes-no' }
	| { readonly is: 'list'; readonly choices: readonly string[] | null; readonly written?: true };

export type Names = Pick<ReadonlyMap<string, Type>, 'get' | 'has'>;

/** The names and more of one part of a file, which come first. Not copied: each rule has some. */
export function withNames(names: Names, more: Iterable<readonly [string, Type]>): Names {
	const own = new Map(more);
	return { get: name => own.get(name) ?? names.get(name), has: name => own.has(name) || names.has(name) };
}

/** What every question and every quantity may be used as. */
export function namesOf(questions: readonly Question[], quantities: readonly AnyQuantity[]): Map<string, Type> {
	const names = new Map<string, Type>();
	for (const question of questions) names.set(question.id, typeOfQuestion(question));
	for (const { id, kind } of quantities) {
		if (kind !== 'hidden') names.set(id, perPull.has(id) ? typeOfKind('list') : typeOfKind(kind));
	}
	return names;
}

/** What a quantity of a kind may be used as. */
export function typeOfKind(kind: QuantityKind): Type {
	if (kind === 'yes-no') return { is: 'yes-no' };
	if (kind === 'list' || kind === 'hidden') return { is: 'list', choices: null };
	return kind === 'words' ? { is: 'text', choices: null } : { is: 'number', kind };
}

function typeOfQuestion({ kind, choices }: Question): Type {
	if (isList(kind)) return { is: 'list', choices: kind === 'several' ? Object.keys(choices) : null };
	switch (kind) {
		case 'whole':
			return { is: 'number', kind: 'count' };
		case 'choice':
			return { is: 'text', choices: Object.keys(choices) };
		case 'teeth':
			return { is: 'text', choices: null };
		default:
			return { is: 'number', kind };
	}
}

/** A type in words, for errors. */
export function wordsFor(type: Type): string {
	if (type.is === 'number') return type.kind === 'count' || type.kind === 'ratio' ? 'a bare number' : `a ${type.kind}`;
	return { text: 'a choice or text', 'yes-no': 'a yes or no', list: 'a list' }[type.is];
}
