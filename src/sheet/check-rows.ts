import { rangeFault } from './check-number.ts';
import { type Context, type Fault, faultOf, isNumber, isObject, listFault } from './fault.ts';

/** A name and an amount each, each amount in its range. */
export function loadsFault(value: unknown, context: Context): Fault {
	const fits = (row: unknown) =>
		Array.isArray(row) && row.length === 2 && typeof row[0] === 'string' && row[0].trim() !== '' && isNumber(row[1]);
	const fault = listFault(value, fits, 'rows like ["fans", 28]: a name and an amount');
	if (fault) return fault;
	const faults = (value as [string, number][]).flatMap(([, amount]) => rangeFault(amount, context) ?? []);
	return faults.find(({ soft }) => !soft) ?? faults[0] ?? null;
}

/** Trouble codes. A code that stands twice is reported, and counts once. */
export function codesFault(value: unknown): Fault {
	const accepted = 'trouble codes like "P0340", each once: a letter P, B, C or U, a digit 0-3, three digits 0-9 or A-F';
	const fault = listFault(value, item => typeof item === 'string' && /^[PBCU][0-3][0-9A-F]{3}$/.test(item), accepted);
	if (fault) return fault;
	const codes = value as string[];
	const duplicate = codes.find((code, index) => codes.indexOf(code) !== index);
	return duplicate === undefined ? null : { ...faultOf(duplicate, accepted)!, soft: true };
}

/** Rows of the wiring worksheet. */
export function circuitsFault(value: unknown): Fault {
	return listFault(
		value,
		isCircuit,
		'rows like {"circuit": "fan relay", "from": "", "to": "", "state": "done", "load": 1, "length": 6}; state is done, to-do or not-used; load in A, length in ft, 0 to 1000',
	);
}

const circuitKeys = ['circuit', 'from', 'to', 'state', 'load', 'length'];

function isCircuit(row: unknown): boolean {
	if (!isObject(row)) return false;
	const text = (key: string) => row[key] === undefined || typeof row[key] === 'string';
	const size = (key: string) => row[key] === undefined || (isNumber(row[key]) && row[key] >= 0 && row[key] <= 1000);
	return (
		Object.keys(row).every(key => circuitKeys.includes(key)) &&
		typeof row.circuit === 'string' &&
		row.circuit.trim() !== '' &&
		['done', 'to-do', 'not-used'].includes(row.state as string) &&
		text('from') &&
		text('to') &&
		size('load') &&
		size('length')
	);
}
