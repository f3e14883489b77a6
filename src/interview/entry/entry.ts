import { checkAnswer } from '../../sheet/check-answer.ts';
import type { SheetProblem } from '../../sheet/problem.ts';
import { type AnswerKind, isList, type Question, type UnitSet } from '../../sheet/question.ts';
import type { Answer } from '../../sheet/sheet.ts';
import { longestField } from '../../text/sanitize.ts';
import { formatAnswer } from '../../wording/format.ts';
import { readChoice, readSeveral } from './choice.ts';
import { readCircuits } from './circuits.ts';
import { readCodes } from './codes.ts';
import { readOrder, readTowers } from './cylinders.ts';
import { howKnown } from './known.ts';
import { readCurve, readCylinders } from './lists.ts';
import { readLoads } from './loads.ts';
import { readNumeric, readWhole } from './number.ts';
import { offered } from './offer.ts';
import type { Entry } from './outcome.ts';
import type { Reader } from './reader.ts';
import { listRefusal } from './refusals.ts';
import { bothWays } from './ways.ts';

const readers: Readonly<Partial<Record<AnswerKind, Reader>>> = {
	whole: readWhole,
	choice: readChoice,
	several: readSeveral,
	'per-cylinder': readCylinders,
	curve: readCurve,
	'firing-order': readOrder,
	pairs: readTowers,
	loads: readLoads,
	codes: readCodes,
	circuits: readCircuits,
	teeth: (_, text) => ({ answer: { value: text.replace(/\s+/g, '') } }),
};

/** Reads a line as people type it, against its question. `cylinders` is how many the engine has. */
export function readEntry(question: Question, text: string, units: UnitSet, cylinders: number): Entry {
	const entry = readAsTyped(question, text, units, cylinders);
	if (entry.is !== 'problem') return entry;
	const way = offered(question, text.trim(), units, other => readAsTyped(question, other, units, cylinders));
	return way ? { is: 'offer', way } : entry;
}

function readAsTyped(question: Question, text: string, units: UnitSet, cylinders: number): Entry {
	const { line, known } = howKnown(isList(question.kind) ? text.trim().replace(/[\s,]+$/, '') : text.trim(), question);
	if (line.length > longestField)
		return { is: 'problem', problem: `A line of ${line.length} characters was found; ${longestField} are taken.` };
	if (line === '') return { is: 'problem', problem: 'Nothing was typed.' };
	const found = (readers[question.kind] ?? readNumeric)(question, line, units);
	if ('problem' in found) {
		const ways = found.twoWays ? bothWays(text.trim(), way => readEntry(question, way, units, cylinders)) : null;
		return ways ? { is: 'two-ways', ways } : { is: 'problem', problem: found.problem };
	}
	const answer: Answer = known ? { ...found.answer, known } : found.answer;
	const problems: SheetProblem[] = [];
	const warnings: SheetProblem[] = [];
	checkAnswer(question, answer, cylinders, { problems, warnings });
	const [problem] = problems;
	if (problem) {
		const refusal = listRefusal(question, answer, cylinders);
		return { is: 'problem', problem: refusal ?? `Found ${problem.found}. This takes ${problem.accepted}.` };
	}
	const echo = `${found.echo ?? formatAnswer(question, answer, units)}${known ? `, ${known}` : ''}`;
	const [odd] = warnings;
	if (odd)
		return { is: 'odd', answer, echo, problem: `${odd.found} is odd: ${odd.accepted}. Enter it once more to keep it.` };
	return { is: 'answer', answer, echo };
}
