// The parts of an audit in one warm process, beside a rule library and rules written by hand.
import { readFileSync } from 'node:fs';
import { assess } from '../../src/audit/assess.ts';
import { certaintyOf } from '../../src/audit/certainty.ts';
import { stateOf } from '../../src/audit/logged.ts';
import { makeModel } from '../../src/audit/model.ts';
import { nextAnswers } from '../../src/audit/next.ts';
import { solve } from '../../src/graph/solve.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { renderAudit } from '../../src/report/render.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { answerTo } from '../../src/sheet/sheet.ts';
import { peerEngine, wholeRules } from './peer-rules.ts';
import { plainDraws } from './plain-draws.ts';
import { plainRules } from './plain-rules.ts';
import { builtRulebook } from './rulebook.ts';

const rulebook = builtRulebook();
const model = makeModel(rulebook, () => '');
const places = wholeRules(rulebook).map(rule => rulebook.rules.indexOf(rule));
const plain = plainRules(rulebook, model.graph.slotOf);

/** Milliseconds a time, the middle one of some rounds of `times` each. */
async function each(rounds: number, times: number, run: () => unknown): Promise<number> {
	const taken: number[] = [];
	for (let round = 0; round < rounds; round++) {
		const start = performance.now();
		for (let time = 0; time < times; time++) await run();
		taken.push((performance.now() - start) / times);
	}
	return taken.sort((a, b) => a - b)[Math.floor(taken.length / 2)]!;
}

for (const [name, file] of [
	['boosted', 'half-finished'],
	['unboosted', 'trailer-hauler'],
] as const) {
	const data = JSON.parse(readFileSync(`${process.cwd()}/demo/${file}.sheet.json`, 'utf8'));
	const checked = checkSheet(data, rulebook.questions);
	const state = stateOf(model, checked.sheet);
	const verdicts = model.judge.judge(state);
	const engine = peerEngine(rulebook, id => state.values[model.graph.slotOf.get(id)!]);
	const options = { date: '2026-01-01', units: 'us', tool: '0', draws: 400 } as const;
	const assessment = assess(model, checked, options);
	const tell = (what: string, ms: number, beside = '') =>
		console.log(`${what.padEnd(46)}${ms.toFixed(3).padStart(9)}  ${beside}`);

	console.log(`\nwarm, ${name}: ${places.length} rules on the whole build`.padEnd(47).concat('      ms'));
	const ours = await each(15, 20, () => places.map(place => model.judge.wordsOf(place, state.values)));
	const byHand = await each(15, 20, () => plain(state.values));
	const library = await each(15, 2, () => engine.run());
	tell('verdicts, this project', ours);
	tell('verdicts, written by hand', byHand, `this project takes ${(ours / byHand).toFixed(1)} x as long`);
	tell('verdicts, json-rules-engine', library, `${(library / ours).toFixed(0)} x as long as this project`);

	const draws = (count: number) => () => certaintyOf(model, checked.sheet, state, verdicts, count);
	tell('sheet checked', await each(15, 2, () => checkSheet(data, rulebook.questions)));
	tell(
		'quantities solved',
		await each(15, 2, () => solve(model.graph, givenAnswers(checked.sheet, rulebook.questions))),
	);
	tell('verdicts with what they rest on', await each(15, 2, () => model.judge.judge(state)));
	tell('400 draws, limits and verdicts', await each(15, 1, draws(400)));
	const many = 10_000;
	const straight = plainDraws(rulebook.questions, model.quantities, state, id => answerTo(checked.sheet, id), true);
	const plainDrawn = () => {
		for (const _ of straight(many));
	};
	const [drawn, plainly] = [await each(3, 1, draws(many)), await each(3, 1, plainDrawn)];
	tell('10,000 draws', drawn);
	tell('10,000 draws, plain functions', plainly, `the draws take ${(drawn / plainly).toFixed(1)} x as long`);
	tell('what to measure next', await each(15, 1, () => nextAnswers(model, checked.sheet, state, verdicts)));
	tell('whole audit', await each(10, 1, () => assess(model, checked, options)));
	tell('printed as Markdown', await each(10, 1, () => renderAudit(assessment, 'md', '')));
}
