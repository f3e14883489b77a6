import { showAnswer } from '../audit/show.ts';
import { checkAnswer } from '../sheet/check-answer.ts';
import type { SheetProblem } from '../sheet/problem.ts';
import { type Question, standAlone, type UnitSet } from '../sheet/question.ts';
import type { Answer, KnownBy } from '../sheet/sheet.ts';
import type { Kind } from '../units/kinds.ts';
import { readList, readPairs } from '../units/list.ts';
import { unitNamed } from '../units/names.ts';
import { type Asked, readNumber } from '../units/read.ts';
import { writeBoth } from '../units/write.ts';

/** What came of a typed line: an answer with its echo, or why not. */
export type Entry =
	| { readonly is: 'answer'; readonly answer: Answer; readonly echo: string }
	/** It can be so, but looks odd: typed once more it is taken. */
	| { readonly is: 'odd'; readonly answer: Answer; readonly echo: string; readonly problem: string }
	| { readonly is: 'problem'; readonly problem: string };

type Read = { readonly answer: Answer; readonly echo?: string } | { readonly problem: string };

/** Reads a line as people type it, against its question. `cylinders` is how many the engine has. */
export function readEntry(question: Question, text: string, units: UnitSet, cylinders: number): Entry {
	const { line, known } = howKnown(text.trim(), question);
	if (line === '') return { is: 'problem', problem: 'Nothing was typed.' };
	const read = readers[question.kind] ?? readNumeric;
	const found = read(question, line, units);
	if ('problem' in found) return { is: 'problem', problem: found.problem };
	const answer: Answer = known ? { ...found.answer, known } : found.answer;
	const problems: SheetProblem[] = [];
	const warnings: SheetProblem[] = [];
	checkAnswer(question, answer, cylinders, { problems, warnings });
	const [problem] = problems;
	if (problem) return { is: 'problem', problem: `Found ${problem.found}. This takes ${problem.accepted}.` };
	const echo = `${found.echo ?? showAnswer(question, answer, units)}${known ? `, ${known}` : ''}`;
	const [odd] = warnings;
	if (odd)
		return { is: 'odd', answer, echo, problem: `${odd.found} is odd: ${odd.accepted}. Enter it once more to keep it.` };
	return { is: 'answer', answer, echo };
}

const knownWords: readonly KnownBy[] = ['measured', 'paperwork', 'estimate'];

/** How a number is known, as the last word of the line: `3.78 in measured`. */
function howKnown(text: string, question: Question): { line: string; known: KnownBy | null } {
	if (question.of.length === 0) return { line: text, known: null };
	const [, line, word] = /^(.*?)[\s,]+([a-z]+)$/is.exec(text) ?? [];
	const known = knownWords.find(other => word && word.length >= 3 && other.startsWith(word.toLowerCase()));
	return known && line ? { line: line.trim(), known } : { line: text, known: null };
}

/** What the number at `index` of a question is asked as. */
function asked(question: Question, units: UnitSet, index = 0): Asked {
	const kind = question.of[index]!;
	const kinds: Kind[] = [kind, ...(question.takes && index === question.of.length - 1 ? [question.takes.kind] : [])];
	const shown = unitNamed(question.unit[units][index]!, [kind])!;
	return { kinds, shown, signed: (question.hard?.[0] ?? 0) < 0 };
}

function readNumeric(question: Question, text: string, units: UnitSet): Read {
	const reading = readNumber(text, asked(question, units));
	if (!reading.ok) return { problem: reading.problem };
	const { typed, unit, value, remark } = reading;
	const density = question.takes && unit.kind === question.takes.kind ? `, ${densityWords(question)}` : '';
	const echo = `${writeBoth(value, unit)}${density}${remark ? ` (${remark})` : ''}`;
	return { answer: { value: typed, unit: unit.symbol }, echo };
}

function densityWords({ takes }: Question): string {
	return typeof takes?.at === 'number' ? `at ${takes.at / 1000} kg/L` : "at the fuel's density";
}

function readWhole(_: Question, text: string): Read {
	return /^-?\d{1,9}$/.test(text) ? { answer: { value: Number(text) } } : { problem: 'A whole number is needed here.' };
}

/** A choice by its number, its name, its words, or the start of one of them. */
function choiceIn(question: Question, text: string): string | null {
	const ids = Object.keys(question.choices);
	if (/^\d+$/.test(text)) return ids[Number(text) - 1] ?? null;
	const wanted = text.toLowerCase();
	const forms = (id: string) => [id, question.choices[id]!.toLowerCase(), id.replaceAll('-', ' ')];
	const exact = ids.find(id => forms(id).includes(wanted));
	if (exact) return exact;
	const starts = ids.filter(id => forms(id).some(form => form.startsWith(wanted)));
	return starts.length === 1 ? starts[0]! : null;
}

function readChoice(question: Question, text: string): Read {
	const choice = choiceIn(question, text);
	return choice
		? { answer: { value: choice } }
		: { problem: `${JSON.stringify(text)} is none of them: type a number or a name.` };
}

function readSeveral(question: Question, text: string): Read {
	const alone = Object.keys(question.choices).find(id => standAlone.includes(id));
	if (/^none\b/i.test(text)) return { answer: { value: alone ? [alone] : [] } };
	const words = text.includes(',') ? text.split(',') : /^[\d\s]+$/.test(text) ? text.split(/\s+/) : [text];
	const chosen: string[] = [];
	for (const word of words.map(part => part.trim()).filter(part => part !== '')) {
		const choice = choiceIn(question, word);
		if (!choice)
			return { problem: `${JSON.stringify(word)} is none of them: type numbers or names, with commas between.` };
		if (!chosen.includes(choice)) chosen.push(choice);
	}
	return { answer: { value: chosen } };
}

function readCylinders(question: Question, text: string, units: UnitSet): Read {
	const reading = readList(text, asked(question, units));
	return reading.ok ? { answer: { value: reading.typed, unit: reading.unit.symbol } } : { problem: reading.problem };
}

function readCurve(question: Question, text: string, units: UnitSet): Read {
	const reading = readPairs(text, [asked(question, units, 0), asked(question, units, 1)]);
	return reading.ok
		? { answer: { value: reading.typed, unit: reading.units.map(({ symbol }) => symbol) } }
		: { problem: reading.problem };
}

function readOrder(_: Question, text: string): Read {
	const run = /^\d{2,9}$/.test(text) ? [...text] : text.split(/[-,\s]+/);
	const order = run.map(Number);
	return order.every(Number.isInteger)
		? { answer: { value: order } }
		: { problem: 'Cylinder numbers in the order they fire, as 1-8-4-3-6-5-7-2.' };
}

function readTowers(_: Question, text: string): Read {
	const pairs = rows(text).map(row => row.split(/[\s&+/-]+/).map(Number));
	const right = pairs.every(pair => pair.length === 2 && pair.every(Number.isInteger));
	return right
		? { answer: { value: pairs } }
		: { problem: 'Two cylinders a coil, a comma after each coil, as 1 6, 3 5.' };
}

const rows = (text: string): string[] =>
	text
		.split(/[,;\n]+/)
		.map(row => row.trim())
		.filter(row => row !== '');

function readLoads(question: Question, text: string, units: UnitSet): Read {
	if (/^none$/i.test(text)) return { answer: { value: [], unit: 'A' } };
	const loads: [string, number][] = [];
	for (const row of rows(text)) {
		const [, name, number] = /^(.*?)[\s:=]+([\d.]+\s*[A-Za-z]*)$/.exec(row) ?? [];
		const reading = name && number ? readNumber(number, asked(question, units)) : null;
		if (!name || !reading?.ok)
			return { problem: `${JSON.stringify(row)} is not a name and its amps. Type them as fans 28, fuel pump 9.` };
		loads.push([name.trim(), reading.value]);
	}
	return { answer: { value: loads, unit: 'A' } };
}

function readCodes(_: Question, text: string): Read {
	if (/^none$/i.test(text)) return { answer: { value: [] } };
	return {
		answer: {
			value: [
				...new Set(
					text
						.toUpperCase()
						.split(/[\s,;]+/)
						.filter(code => code !== ''),
				),
			],
		},
	};
}

const states: Readonly<Record<string, string>> = {
	done: 'done',
	'to-do': 'to-do',
	todo: 'to-do',
	'to do': 'to-do',
	'not-used': 'not-used',
	'not used': 'not-used',
};

function readCircuits(_: Question, text: string): Read {
	if (/^none$/i.test(text)) return { answer: { value: [] } };
	const circuits: Record<string, unknown>[] = [];
	for (const row of text.split(/[|\n]+/).filter(part => part.trim() !== '')) {
		const [circuit = '', from = '', to = '', state = '', load, length] = row.split(';').map(cell => cell.trim());
		const at = states[state.toLowerCase()];
		const numbers = { ...(load ? { load: Number(load) } : {}), ...(length ? { length: Number(length) } : {}) };
		if (!circuit || !at || Object.values(numbers).some(Number.isNaN)) {
			return {
				problem:
					'A circuit is typed as name; from; to; done, to-do or not-used; amps; feet. The last two may be left out; a | starts the next.',
			};
		}
		circuits.push({ circuit, from, to, state: at, ...numbers });
	}
	return { answer: { value: circuits } };
}

const readers: Readonly<Partial<Record<Question['kind'], (question: Question, text: string, units: UnitSet) => Read>>> =
	{
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
