// Sheets for `audit --lines`, one a line: `node line-sheets.mjs KIND BUILD COUNT`, KIND variants or others.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { makeModel } from '../../src/audit/model.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { BadSheet } from '../../src/sheet/problem.ts';
import type { Question } from '../../src/sheet/question.ts';
import { answerTo, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { anySheet } from '../quantities/any-sheet.ts';
import { chance } from '../support/chance.ts';
import { randomSheet } from '../support/random-sheet.ts';
import { builtRulebook } from './rulebook.ts';

const examples = JSON.parse(readFileSync('dist/examples.json', 'utf8'));
const rulebook = { ...builtRulebook(), builds: examples.builds };
const { graph } = makeModel(rulebook, () => '');
const seed = 20_260_501;
const random = chance(seed);
const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
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

/** A number moved by up to a twentieth, a choice turned to another. */
function another(question: Question, value: unknown): unknown {
	if (question.kind === 'choice') return pick(Object.keys(question.choices));
	return Number(((value as number) * (0.95 + 0.1 * random())).toPrecision(4));
}

/** One build with one to three answers changed from line to line. */
function* variants(start: Sheet): Generator<Sheet> {
	const open = rulebook.questions.filter(({ id, kind }) => {
		if (id === 'boost.kind' || kind === 'whole') return false;
		return kind === 'choice' ? answerTo(start, id)?.value : typeof answerTo(start, id)?.value === 'number';
	});
	for (let sheet = start; ; ) {
		yield sheet;
		let next = sheet;
		for (let changes = 1 + Math.floor(3 * random()); changes > 0; changes--) {
			const question = pick(open);
			const answer = answerTo(next, question.id)!;
			next = withAnswer(next, question.id, { ...answer, value: another(question, answer.value) });
		}
		if (isGood(next)) sheet = next;
	}
}

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

const [kind, build, count] = process.argv.slice(2);
const boosted = build === 'boosted';
const sheets = kind === 'others' ? others(boosted) : variants(demo(boosted ? 'half-finished' : 'trailer-hauler'));
for (let line = 0; line < Number(count); line++) console.log(JSON.stringify(sheets.next().value));
