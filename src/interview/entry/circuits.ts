import type { Reader } from './reader.ts';

const states: Readonly<Record<string, string>> = {
	done: 'done',
	'to-do': 'to-do',
	todo: 'to-do',
	'to do': 'to-do',
	'not-used': 'not-used',
	'not used': 'not-used',
};

const howToType =
	'A circuit is typed as name; from; to; done, to-do or not-used; amps; feet. The last two may be left out; a | starts the next.';

/** The wiring worksheet's rows: cells parted by semicolons (or tabs, as pasted from a table), rows by a bar or a new line. */
export const readCircuits: Reader = (_, text) => {
	if (/^none$/i.test(text)) return { answer: { value: [] } };
	const circuits: Record<string, unknown>[] = [];
	for (const row of text.split(/[|\n]+/).filter(part => part.trim() !== '')) {
		const [circuit = '', from = '', to = '', state = '', load, length] = row.split(/[;\t]/).map(cell => cell.trim());
		const at = states[state.toLowerCase()];
		const numbers = { ...(load ? { load: Number(load) } : {}), ...(length ? { length: Number(length) } : {}) };
		if (!circuit || !at || Object.values(numbers).some(Number.isNaN)) return { problem: howToType };
		circuits.push({ circuit, from, to, state: at, ...numbers });
	}
	return { answer: { value: circuits } };
};
