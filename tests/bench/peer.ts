// What somebody would write with a library: the same sheet, the project's own quantities, json-rules-engine for the rules,
// and where draws are asked for, plain functions for those: `peer.mjs SHEET DRAWS once|each|formulas`. Only with `each` does it
// say what an audit says: in what share of the draws each rule fails. With `formulas` the limits of the cylinder are in no draw.
// No report, no plugs, nothing said of what a verdict rests on.
import { readFileSync } from 'node:fs';
import { solve } from '../../src/graph/solve.ts';
import { quantities } from '../../src/log/quantities.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { modelGraph } from '../../src/quantities/model-graph.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { answerTo } from '../../src/sheet/sheet.ts';
import { peerEngine } from './peer-rules.ts';
import { plainDraws } from './plain-draws.ts';
import { builtRulebook } from './rulebook.ts';

const [, , file, count = '0', what = 'once'] = process.argv;
const judged = what === 'each';
const rulebook = builtRulebook();
const { sheet } = checkSheet(JSON.parse(readFileSync(file!, 'utf8')), rulebook.questions);
const graph = modelGraph(rulebook.questions, quantities);
const state = solve(graph, givenAnswers(sheet, rulebook.questions));
let values: readonly unknown[] = state.values;
const engine = peerEngine(rulebook, name => values[graph.slotOf.get(name)!] as never);
const { events } = await engine.run();
const failed = new Map(events.map(({ type }) => [type, 0]));
let whole = 0;
if (Number(count) > 0) {
	for (const drawn of plainDraws(
		rulebook.questions,
		quantities,
		state,
		id => answerTo(sheet, id),
		what !== 'formulas',
	)(Number(count))) {
		whole++;
		if (!judged) continue;
		values = drawn;
		for (const { type } of (await engine.run()).events) failed.set(type, (failed.get(type) ?? 0) + 1);
	}
}
console.log([...failed].map(([type, times]) => `${type} ${judged ? times / whole : ''}`).join('\n'), whole);
