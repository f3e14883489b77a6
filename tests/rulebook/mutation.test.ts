import { expect, test } from 'vitest';
import type { State } from '../../src/graph/solve.ts';
import { exampleSheets, outcomeOf, solveExample } from '../../src/rulebook/examples.ts';
import { Judge } from '../../src/rulebook/judge.ts';
import type { Rule } from '../../src/rulebook/rulebook.ts';
import { testModel } from '../support/model.ts';
import { belowFloor } from './floor.ts';
import { spoiltRules } from './spoil.ts';

// Each rule is spoilt in every small way, one at a time: each comparison turned round and made strict or lax, each
// constant moved 5 % either way, && and || swapped, ! dropped, each choice of a list taken out, stage and harm lowered.
// Its own examples must notice, and for stage and harm the floor under the catalog.

const { rulebook, graph } = testModel();

/** What each example of a rule comes to, in its own words. */
function outcomes(rule: Rule, states: readonly State[]): string {
	const judge = new Judge({ ...rulebook, rules: [rule] }, graph.slotOf);
	return rule.examples.map((example, place) => outcomeOf(example, judge.judge(states[place]!))).join('\n');
}

test('the examples of the rules notice 95 % or more of all small faults in them', () => {
	const alive: string[] = [];
	const sheets = exampleSheets(rulebook);
	let count = 0;
	for (const rule of rulebook.rules) {
		const states = rule.examples.map(example => solveExample(rulebook, sheets, graph, rule, example));
		const right = outcomes(rule, states);
		for (const { how, rule: spoilt } of spoiltRules(rule)) {
			count++;
			if (!belowFloor(spoilt) && outcomes(spoilt, states) === right) alive.push(`${rule.id}: ${how}`);
		}
	}
	const share = 1 - alive.length / count;
	console.info(`${count} faults, ${count - alive.length} noticed (${(100 * share).toFixed(1)} %)`);
	expect(count).toBeGreaterThan(1000);
	expect(share, alive.join('\n')).toBeGreaterThanOrEqual(0.95);
}, 120_000);
