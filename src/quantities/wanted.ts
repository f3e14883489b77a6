import { bind } from '../expressions/bind.ts';
import { namesIn, type Outcome } from '../expressions/tree.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { isList, type Question } from '../sheet/question.ts';

type Solved = Pick<State, 'graph' | 'values'>;

/**
 * Whether such a build is asked for an answer at all. What is not known counts as nothing here: bearings of which nobody
 * knows are not renewed ones. The line that wants that answer holds its stage up by itself. `lists` are the answers that
 * are lists.
 */
export function isWanted({ wantedWhen }: Question, { graph, values }: Solved, lists: ReadonlySet<string>): boolean {
	if (!wantedWhen) return true;
	const read = (name: string): Outcome => values[slotNamed(graph, name)] ?? (lists.has(name) ? [] : Number.NaN);
	return bind(wantedWhen, name => () => read(name))() !== false;
}

/** The answers that such a build is not asked for. */
export function unwantedOn(state: Solved, questions: readonly Question[]): ReadonlySet<string> {
	const lists = new Set(questions.filter(({ kind }) => isList(kind)).map(({ id }) => id));
	return new Set(questions.filter(question => !isWanted(question, state, lists)).map(({ id }) => id));
}

/** The names that decide whether a question is asked. */
export const wantedBy = ({ wantedWhen }: Question): string[] => (wantedWhen ? [...namesIn(wantedWhen)] : []);
