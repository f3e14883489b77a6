import { type Expression, substitute } from '../../src/expressions/tree.ts';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';
import { wholeRules } from './peer-rules.ts';

/** The rules as somebody would write them by hand: plain operators on the values, no thought for what is not known. */
export function plainRules(
	rulebook: Rulebook,
	slotOf: ReadonlyMap<string, number>,
): (values: readonly unknown[]) => number {
	const written = (tree: Expression): string => {
		switch (tree[0]) {
			case 'value':
			case 'list':
				return JSON.stringify(tree[1]);
			case 'name':
				return `v[${slotOf.get(tree[1])}]`;
			case 'size':
				return `(${written(tree[1])}?.length)`;
			case '!':
				return `(!${written(tree[1])})`;
			case 'in':
				return `(${written(tree[2])}?.includes(${written(tree[1])}))`;
			case '?:':
				return `(${written(tree[1])} ? ${written(tree[2])} : ${written(tree[3])})`;
			default:
				return tree.length === 2 ? `(-${written(tree[1])})` : `(${written(tree[1])} ${tree[0]} ${written(tree[2]!)})`;
		}
	};
	const functions = wholeRules(rulebook).map(({ applies, holds, thresholds }) => {
		const named = new Map(Object.entries(thresholds).map(([name, { value }]) => [name, value]));
		const test = (tree: Expression | null) => (tree ? written(substitute(tree, named)) : 'true');
		return new Function('v', `return ${test(applies)} && !(${test(holds)})`) as (values: readonly unknown[]) => boolean;
	});
	return values => functions.reduce((fails, rule) => fails + (rule(values) ? 1 : 0), 0);
}
