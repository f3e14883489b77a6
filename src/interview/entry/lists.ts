import { readList, readPairs } from '../../units/list.ts';
import { askedAs, type Reader, refused } from './reader.ts';

/** A number a cylinder, in cylinder order; a dash where it could not be measured. */
export const readCylinders: Reader = (question, text, units) => {
	if (/^[-\s,;]+$/.test(text)) return { problem: 'None of them is measured: then the answer is "not known".' };
	const reading = readList(text, askedAs(question, units));
	return reading.ok ? { answer: { value: reading.typed, unit: reading.unit.symbol } } : refused(reading);
};

/** The points of a curve: pairs on one line, or two columns as pasted from a table. */
export const readCurve: Reader = (question, text, units) => {
	const reading = readPairs(text, [askedAs(question, units, 0), askedAs(question, units, 1)]);
	return reading.ok
		? { answer: { value: reading.typed, unit: reading.units.map(({ symbol }) => symbol) } }
		: refused(reading);
};
