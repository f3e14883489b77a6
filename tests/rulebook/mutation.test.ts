import { expect, test } from 'vitest';
import { type Expression, operands } from '../../src/expressions/tree.ts';
import type { State } from '../../src/quantities/pass.ts';
import { solveExample } from '../../src/rulebook/examples.ts';
import { Judge } from '../../src/rulebook/judge.ts';
import type { Example, Rule } from '../../src/rulebook/rulebook.ts';
import { testModel } from '../support/model.ts';

// Each rule is spoilt in every small way, one at a time, and its own examples are run: they must notice. Each comparison
// is turned round and made strict or lax, each constant moved 5 % either way, && and || swapped, ! dropped.

const { rulebook, graph } = testModel();

const turned: Readonly<Record<string, readonly string[]>> = {
	'<': ['>=', '<='],
	'<=': ['>', '<'],
	'>': ['<=', '>='],
	'>=': ['<', '>'],
	'==': ['!='],
	'!=': ['=='],
	'&&': ['||'],
	'||': ['&&'],
};

/** Every way of spoiling one place of a tree. */
function spoilt(tree: Expression): Expression[] {
	const [sign] = tree;
	const own: Expression[] = (turned[sign] ?? []).map(other => [other, ...operands(tree)] as Expression);
	if (sign === '!') own.push(tree[1]);
	if (sign === 'value' && typeof tree[1] === 'number' && tree[1] !== 0)
		own.push(['value', tree[1] * 1.05], ['value', tree[1] * 0.95]);
	const inner = operands(tree).flatMap((part, place) =>
		spoilt(part).map(changed => [sign, ...operands(tree).with(place, changed)] as Expression),
	);
	return [...own, ...inner];
}

function mutantsOf(rule: Rule): Rule[] {
	return [
		...spoilt(rule.holds).map(holds => ({ ...rule, holds })),
		...(rule.applies ? spoilt(rule.applies).map(applies => ({ ...rule, applies })) : []),
		...Object.entries(rule.thresholds).flatMap(([name, threshold]) =>
			spoilt(threshold.value).map(value => ({
				...rule,
				thresholds: { ...rule.thresholds, [name]: { ...threshold, value } },
			})),
		),
	];
}

const states = new Map<string, State>();
function stateOf(example: Example): State {
	const { on, answers, quantities, without } = example;
	const key = JSON.stringify([on, answers, quantities, without]);
	const state = states.get(key) ?? solveExample(rulebook, graph, example);
	states.set(key, state);
	return state;
}

/** What a rule comes to on one of its examples. */
function outcome(rule: Rule, example: Example): string {
	const verdicts = new Judge({ ...rulebook, rules: [rule] }, graph.slotOf).judge(stateOf(example));
	const found = verdicts.find(({ subject }) => example.item === null || subject === example.item);
	return found
		? `${found.verdict} ${found.verdict === 'cannot-tell' && example.missing ? found.missing.join() : ''}`
		: 'nothing';
}

test('the examples of the rules notice 95 % or more of all small faults in them', () => {
	const alive: string[] = [];
	let count = 0;
	for (const rule of rulebook.rules) {
		const right = rule.examples.map(example => outcome(rule, example));
		for (const mutant of mutantsOf(rule)) {
			count++;
			const noticed = rule.examples.some((example, place) => outcome(mutant, example) !== right[place]);
			if (!noticed)
				alive.push(
					`${rule.id}: ${JSON.stringify(mutant.holds === rule.holds ? (mutant.applies === rule.applies ? mutant.thresholds : mutant.applies) : mutant.holds)}`,
				);
		}
	}
	console.info(
		`${count} faults, ${count - alive.length} noticed (${(100 - (100 * alive.length) / count).toFixed(1)} %)`,
	);
	expect(alive.length / count, alive.join('\n')).toBeLessThanOrEqual(0.05);
}, 120_000);
