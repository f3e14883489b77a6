import type { Outcome } from '../expressions/tree.ts';
import { perPull } from '../log/quantities.ts';
import type { Question } from '../sheet/question.ts';
import type { Rule, VerdictWord } from './rulebook.ts';
import type { TroubleCode } from './trouble-code.ts';

/** One part that a rule with `each` speaks of: a strap, a cylinder, a code, a circuit. */
export interface Subject {
	readonly name: string;
	/** Values of `item`, `value`, `state`, `code_title`, `code_action`, `code_topics`, `code_known`. */
	readonly names: Readonly<Record<string, Outcome>>;
	/** Set where the part itself decides: a cylinder without a reading cannot be decided. */
	readonly unknown: VerdictWord | null;
}

/** A circuit as the sheet keeps it. */
export interface Circuit {
	readonly circuit: string;
	readonly state: string;
}

/**
 * The parts a rule speaks of one by one; null for a rule on the build as a whole, and for one whose list is not known
 * (then it cannot be decided, once) or not in effect.
 */
export function subjectsOf(
	rule: Rule,
	questions: ReadonlyMap<string, Question>,
	values: readonly Outcome[],
	slotOf: (id: string) => number,
	codes: Readonly<Record<string, TroubleCode>>,
): Subject[] | null {
	const { each } = rule;
	if (!each) return null;
	const list = values[slotOf(each.answer)];
	if (list === null) return [];
	if (list === undefined) return null;
	const parts = list as readonly unknown[];
	switch (each.over) {
		case 'plugs':
			throw new TypeError('the parts of plugs are judged by themselves');
		case 'choices': {
			const choices = each.subjects ?? Object.keys(questions.get(each.answer)!.choices);
			return choices.map(name => ({ name, names: { item: name }, unknown: null }));
		}
		case 'cylinders':
			return parts.map((reading, index) => {
				const name = String(index + 1);
				const unknown = reading === null ? 'cannot-tell' : null;
				return { name, names: { item: name, value: (reading ?? undefined) as Outcome }, unknown };
			});
		case 'codes':
			return [...new Set(parts as string[])].map(name => {
				const known = Object.hasOwn(codes, name) ? codes[name] : undefined;
				const topics = known && known.topics.length > 0 ? known.topics.join(', ') : undefined;
				const names = {
					item: name,
					code_title: known?.title,
					code_action: known?.action,
					code_topics: topics,
					code_known: known !== undefined,
				};
				return { name, names, unknown: null };
			});
		case 'pulls':
			// No pull in the log: there is one verdict, that it cannot be decided.
			return parts.length === 0 ? null : (parts as string[]).map((name, index) => pullOf(name, index, values, slotOf));
		case 'circuits':
			return (parts as Circuit[]).map(({ circuit, state }) => ({
				name: circuit,
				names: { item: circuit, state },
				unknown: null,
			}));
	}
}

/** A pull, with its own figure in place of each list of them. */
function pullOf(name: string, index: number, values: readonly Outcome[], slotOf: (id: string) => number): Subject {
	const names: Record<string, Outcome> = { item: name };
	for (const id of perPull) {
		const list = values[slotOf(id)];
		names[id] = Array.isArray(list) ? (list[index] as Outcome) : list;
	}
	return { name, names, unknown: null };
}
