import type { UnitSet } from '../../sheet/question.ts';
import { unitNamed } from '../../units/names.ts';
import { readNumber } from '../../units/read.ts';
import { fromCanonical } from '../../units/unit.ts';
import type { Reader } from './reader.ts';

const states: Readonly<Record<string, string>> = {
	done: 'done',
	'to-do': 'to-do',
	todo: 'to-do',
	'to do': 'to-do',
	'not-used': 'not-used',
	'not used': 'not-used',
};

/** The wiring worksheet's rows: cells parted by semicolons (or tabs, as pasted from a table), rows by a bar or a new line. */
export const readCircuits: Reader = (_, text, units) => {
	if (/^none$/i.test(text)) return { answer: { value: [] } };
	const circuits: Record<string, unknown>[] = [];
	for (const row of text.split(/[|\n]+/).filter(part => part.trim() !== '')) {
		const [circuit = '', from = '', to = '', state = '', load = '', length = ''] = row
			.split(/[;\t]/)
			.map(cell => cell.trim());
		if (!circuit) return { problem: 'A circuit begins with its name: name; from; to; done, to-do or not-used.' };
		const at = states[state.toLowerCase()];
		if (!at) return { problem: `${circuit}: the fourth is done, to-do or not-used; ${found(state)}.` };
		const amps = sized(load, 'current', 'A', 'A');
		if (amps === null) return { problem: `${circuit}: the fifth is amps, as 10 or 0.5; ${found(load)}.` };
		const feet = sized(length, 'length', units === 'us' ? 'ft' : 'm', 'ft');
		if (feet === null)
			return { problem: `${circuit}: the sixth is the length in ${lengthWord(units)}; ${found(length)}.` };
		const numbers = { ...(amps === undefined ? {} : { load: amps }), ...(feet === undefined ? {} : { length: feet }) };
		circuits.push({ circuit, from, to, state: at, ...numbers });
	}
	return { answer: { value: circuits } };
};

const found = (cell: string): string => (cell === '' ? 'nothing stands there' : `${JSON.stringify(cell)} stands there`);
const lengthWord = (units: UnitSet): string => (units === 'us' ? 'feet' : 'meters');

/** A cell as a number in the unit that the sheet keeps it in; undefined when it is empty, null when it is none or none that fits. */
function sized(cell: string, kind: 'current' | 'length', shown: string, kept: string): number | undefined | null {
	if (cell === '') return undefined;
	const reading = readNumber(cell, { kinds: [kind], shown: unitNamed(shown, [kind])! });
	if (!reading.ok) return null;
	const size =
		reading.unit.symbol === kept
			? reading.typed
			: Number(fromCanonical(reading.value, unitNamed(kept, [kind])!).toPrecision(4));
	return size >= 0 && size <= 1000 ? size : null;
}
