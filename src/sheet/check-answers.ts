import { nearest } from '../text/likeness.ts';
import { writeInFull } from '../units/write.ts';
import { bySection } from './by-section.ts';
import { unitsOfAnswer } from './canonical.ts';
import { checkAnswer, type Found } from './check-answer.ts';
import { isObject } from './fault.ts';
import { noteProblem, shown } from './problem.ts';
import type { Question } from './question.ts';
import { type Answer, usualCylinders } from './sheet.ts';

/** Checks every answer of a sheet, and that each stands in its section under its own name. */
export function checkAnswers(answers: unknown, questions: readonly Question[], into: Found): void {
	const refuse = (path: string, found: unknown, accepted: string) =>
		noteProblem(into.problems, { path, found: shown(found), accepted });
	if (!isObject(answers)) {
		refuse('answers', answers, 'an object with a section of answers each, {} for none');
		return;
	}
	const sections = bySection(questions);
	const cylinders = cylindersIn(answers);
	for (const section of Object.keys(answers)) {
		const inside = answers[section];
		const asked = sections.get(section);
		if (!asked) refuse(`answers.${section}`, section, `one of the sections ${[...sections.keys()].join(', ')}`);
		else if (!isObject(inside)) refuse(section, inside, 'an object with the answers of this section');
		else {
			for (const name of Object.keys(inside)) {
				const question = asked.get(name);
				if (question) checkWithRemark(question, inside[name], cylinders, into);
				else refuse(`${section}.${name}`, name, nearestOf(`${section}.${name}`, [...asked.values()]));
			}
		}
	}
}

/** An interview says at once what a unit makes one say (a dash size is no bore); of a sheet it is reported beside what is odd. */
function checkWithRemark(question: Question, answer: unknown, cylinders: number, into: Found): void {
	const before = into.problems.length;
	checkAnswer(question, answer, cylinders, into);
	if (into.problems.length > before) return;
	const { value } = answer as Answer;
	if (typeof value !== 'number') return;
	const [unit] = unitsOfAnswer(question, answer as Answer);
	if (unit?.remark)
		into.warnings.push({ path: question.id, found: writeInFull(value, unit), accepted: unit.remark(value) });
}

/** How many cylinders the lists of this sheet have: as answered, else the usual. */
function cylindersIn(answers: Record<string, unknown>): number {
	const engine = Object.hasOwn(answers, 'engine')
		? (answers.engine as Record<string, { value?: unknown }> | null)
		: null;
	const value = engine && Object.hasOwn(engine, 'cylinders') ? engine.cylinders?.value : undefined;
	return Number.isInteger(value) && (value as number) > 0 && (value as number) <= 16
		? (value as number)
		: usualCylinders;
}

/** The answers of the section that are most like it: for a slip of the fingers. */
const nearestOf = (id: string, asked: readonly Question[]): string =>
	`an answer of this section, like ${nearest(
		id,
		asked.map(question => question.id),
	).join(', ')}`;
