// Sheets for `audit --lines`, one a line: `node line-sheets.mjs BUILD COUNT`, BUILD boosted or unboosted.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { makeModel } from '../../src/audit/model.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { BadSheet } from '../../src/sheet/problem.ts';
import { answerTo, type Sheet } from '../../src/sheet/sheet.ts';
import { anySheet } from '../quantities/any-sheet.ts';
import { chance } from '../support/chance.ts';
import { randomSheet } from '../support/random-sheet.ts';
import { builtRulebook } from './rulebook.ts';

const examples = JSON.parse(readFileSync('dist/examples.json', 'utf8'));
const rulebook = { ...builtRulebook(), builds: examples.builds };
const { graph } = makeModel(rulebook, () => '');
const seed = 20_260_501;
const random = chance(seed);
const demo = (name: string): Sheet => JSON.parse(readFileSync(`demo/${name}.sheet.json`, 'utf8'));

const isGood = (sheet: Sheet): boolean => {
	try {
		checkSheet(JSON.parse(JSON.stringify(sheet)), rulebook.questions);
		return true;
	} catch (error) {
		if (error instanceof BadSheet) return false;
		throw error;
	}
};

/** A hundred builds in rotation, each as good as unlike the one before. */
function* others(boosted: boolean): Generator<Sheet> {
	const wanted = (sheet: Sheet) => isGood(sheet) && (answerTo(sheet, 'boost.kind')?.value === 'none') !== boosted;
	const any = fc.sample(anySheet(rulebook.questions, 'plausible'), { seed, numRuns: 200 }).filter(wanted).slice(0, 30);
	const all = [...['half-finished', 'after-changes', 'trailer-hauler'].map(demo).filter(wanted), ...any];
	while (all.length < 100) {
		const sheet = randomSheet(rulebook, graph, random);
		if (wanted(sheet)) all.push(sheet);
	}
	for (let index = 0; ; index++) yield all[(index * 37) % all.length]!;
}

const [build, count] = process.argv.slice(2);
const sheets = others(build === 'boosted');
for (let line = 0; line < Number(count); line++) console.log(JSON.stringify(sheets.next().value));
