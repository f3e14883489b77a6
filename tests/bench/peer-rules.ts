import { Engine, type NestedCondition, type TopLevelCondition } from 'json-rules-engine';
import { bind } from '../../src/expressions/bind.ts';
import { type Expression, type Outcome, substitute } from '../../src/expressions/tree.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';

/** Rules on the build as a whole: those that go through a list part by part are left to neither side. */
export const wholeRules = (rulebook: Rulebook) => rulebook.rules.filter(({ each }) => !each);

const operators = {
	'==': 'equal',
	'!=': 'notEqual',
	'<': 'lessThan',
	'<=': 'lessThanInclusive',
	'>': 'greaterThan',
	'>=': 'greaterThanInclusive',
} as const;

/** The same conditions for json-rules-engine; arithmetic becomes facts that the project's own closures compute. */
export function peerEngine(rulebook: Rulebook, read: (name: string) => Outcome): Engine {
	const engine = new Engine([], { allowUndefinedFacts: true });
	const known = new Set<string>();
	const factOf = (tree: Expression): string => {
		const name = tree[0] === 'name' ? tree[1] : JSON.stringify(tree);
		if (!known.has(name)) {
			const now = tree[0] === 'name' ? () => read(name) : bind(tree, other => () => read(other));
			engine.addFact(name, () => now() ?? undefined);
			known.add(name);
		}
		return name;
	};
	const condition = (tree: Expression): NestedCondition => {
		switch (tree[0]) {
			case '&&':
				return { all: [condition(tree[1]), condition(tree[2])] };
			case '||':
				return { any: [condition(tree[1]), condition(tree[2])] };
			case '!':
				return { not: condition(tree[1]) };
			case '==':
			case '!=':
			case '<':
			case '<=':
			case '>':
			case '>=': {
				const value = tree[2][0] === 'value' ? tree[2][1] : { fact: factOf(tree[2]) };
				return { fact: factOf(tree[1]), operator: operators[tree[0]], value };
			}
			default:
				return { fact: factOf(tree), operator: 'equal', value: true };
		}
	};
	for (const { id, applies, holds, thresholds } of wholeRules(rulebook)) {
		const named = new Map(Object.entries(thresholds).map(([name, { value }]) => [name, value]));
		const parts: NestedCondition[] = [{ not: condition(substitute(holds, named)) }];
		if (applies) parts.unshift(condition(substitute(applies, named)));
		const conditions: TopLevelCondition = { all: parts };
		engine.addRule({ conditions, event: { type: id } });
	}
	return engine;
}
