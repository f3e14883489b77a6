// What somebody would write with a library: the same sheet, the project's own quantities, json-rules-engine for the rules,
// and where draws are asked for, plain functions for those. No report, nothing said of what a verdict rests on.
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

const rulebook = builtRulebook();
const { sheet } = checkSheet(JSON.parse(readFileSync(process.argv[2]!, 'utf8')), rulebook.questions);
const graph = modelGraph(rulebook.questions, quantities);
const state = solve(graph, givenAnswers(sheet, rulebook.questions));
const { events } = await peerEngine(rulebook, name => state.values[graph.slotOf.get(name)!]).run();
console.log(events.map(({ type }) => type).join('\n'));
const draws = Number(process.argv[3] ?? 0);
if (draws > 0) console.log(plainDraws(rulebook.questions, quantities, state, id => answerTo(sheet, id))(draws));
