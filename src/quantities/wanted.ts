import { bind } from '../expressions/bind.ts';
import { type Expression, namesIn, type Outcome } from '../expressions/tree.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { isList, type Question } from '../sheet/question.ts';

type Solved = Pick<State, 'graph' | 'values'>;

/** An expression on an answer being asked, bound once: it looks at a solved state and at which answers are lists. */
type Test = (solved: Solved, lists: ReadonlySet<string>) => boolean;

const tests = new WeakMap<Expression, Test>();

/**
 * Whether such a build is asked for an answer at all. What is not known counts as nothing here: bearings of which nobody
 * knows are not renewed ones. The line that wants that answer holds its stage up by itself. `lists` are the answers that
 * are lists.
 */
export function isWanted({ wantedWhen }: Question, solved: Solved, lists: ReadonlySet<string>): boolean {
	if (!wantedWhen) return true;
	let test = tests.get(wantedWhen);
	if (!test) tests.set(wantedWhen, (test = testOf(wantedWhen)));
	return test(solved, lists);
}

function testOf(wantedWhen: Expression): Test {
	let at: Solved;
	let areLists: ReadonlySet<string>;
	const read = (name: string): Outcome =>
		at.values[slotNamed(at.graph, name)] ?? (areLists.has(name) ? [] : Number.NaN);
	const now = bind(wantedWhen, name => () => read(name));
	return (solved, lists) => {
		at = solved;
		areLists = lists;
		return now() !== false;
	};
}

/** The answers that such a build is not asked for. */
export function unwantedOn(state: Solved, questions: readonly Question[]): ReadonlySet<string> {
	const lists = new Set<string>();
	for (const { id, kind } of questions) if (isList(kind)) lists.add(id);
	const unwanted = new Set<string>();
	for (const question of questions) if (!isWanted(question, state, lists)) unwanted.add(question.id);
	return unwanted;
}

/** The names that decide whether a question is asked. */
export const wantedBy = ({ wantedWhen }: Question): string[] => (wantedWhen ? [...namesIn(wantedWhen)] : []);
