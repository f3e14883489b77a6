import type { Question } from '../../sheet/question.ts';
import { readNumber } from '../../units/read.ts';
import { writeBoth } from '../../units/write.ts';
import { askedAs, type Read, type Reader, refused } from './reader.ts';

/** One number with a unit, echoed in both unit sets. */
export const readNumeric: Reader = (question, text, units) => {
	const reading = readNumber(text, askedAs(question, units));
	if (!reading.ok) return refused(reading);
	const { typed, unit, value, remark } = reading;
	const density = question.takes && unit.kind === question.takes.kind ? `, ${densityWords(question)}` : '';
	const echo = `${writeBoth(value, unit)}${density}${remark ? ` (${remark})` : ''}`;
	return { answer: { value: typed, unit: unit.symbol }, echo };
};

function densityWords({ takes }: Question): string {
	return typeof takes?.at === 'number' ? `at ${takes.at / 1000} kg/L` : "at the fuel's density";
}

/** A year, a count of teeth or pins. */
export function readWhole(_: Question, text: string): Read {
	return /^-?\d{1,9}$/.test(text)
		? { answer: { value: Number(text) } }
		: { problem: `${JSON.stringify(text)} is not a whole number; one is needed here.` };
}
