import { namesIn } from '../../expressions/tree.ts';
import type { Graph } from '../../graph/graph.ts';
import { LimitNode } from '../../graph/limit.ts';
import type { LimitWords, Rule } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';

const boost = 'boost.target';

/** Notes each rule on boost that can cost the engine and is neither a boost limit nor says why not. */
export function refuseUnlimited(
	rules: readonly Rule[],
	fieldsOf: ReadonlyMap<string, Fields>,
	graph: Graph,
	limits: Readonly<Record<string, LimitWords>>,
): void {
	for (const rule of rules) {
		const report = (key: string, message: string) => fieldsOf.get(rule.id)?.report(key, message);
		for (const id of rule.limit)
			if (!Object.hasOwn(limits, id)) report('limit', `limit: ${quote(id)} is not in rules/limits.yaml`);
		const said = rule.limit.length > 0;
		if (said && rule.no_limit !== '') report('no_limit', 'no_limit: this rule names its limit already');
		if (rule.harm === 'engine' && !said && rule.no_limit === '' && movesWithBoost(rule, graph))
			report(
				'holds',
				`this moves with boost and can cost the engine: name its limit, or say in no_limit why it is none`,
			);
	}
}

/** Whether what a rule holds moves with the boost, through whatever quantities. A limit on boost does not: it is what it looks for. */
export function movesWithBoost({ holds, thresholds }: Rule, graph: Graph): boolean {
	const open = [...namesIn(holds)].flatMap(name => (thresholds[name] ? [...namesIn(thresholds[name].value)] : [name]));
	const seen = new Set<string>();
	for (let id = open.pop(); id !== undefined; id = open.pop()) {
		if (id === boost) return true;
		const slot = graph.slotOf.get(id);
		if (slot === undefined || seen.has(id)) continue;
		seen.add(id);
		const node = graph.nodes[slot]!;
		if (!(node instanceof LimitNode && node.limit.vary === boost)) open.push(...node.dependencies);
	}
	return false;
}
