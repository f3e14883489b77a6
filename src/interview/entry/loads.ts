import { readNumber } from '../../units/read.ts';
import { askedAs, type Reader, refused, rowsOf } from './reader.ts';

/** Names and their amps: `fans 28, fuel pump 9`, or two columns. */
export const readLoads: Reader = (question, text, units) => {
	if (/^none$/i.test(text)) return { answer: { value: [], unit: 'A' } };
	const loads: [string, number][] = [];
	for (const row of rowsOf(text)) {
		const [, name, number] = /^(.*?)[\s:=]+([\d.]+\s*[A-Za-z]*)$/.exec(row) ?? [];
		if (!name || !number)
			return { problem: `${JSON.stringify(row)} is not a name and its amps. Type them as fans 28, fuel pump 9.` };
		const reading = readNumber(number, askedAs(question, units));
		if (!reading.ok) return refused(reading);
		loads.push([name.trim(), reading.value]);
	}
	return { answer: { value: loads, unit: 'A' } };
};
