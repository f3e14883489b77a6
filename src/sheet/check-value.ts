import { readParts } from '../units/read.ts';
import { fromKept, toKept, type Unit } from '../units/unit.ts';
import { writeInFull } from '../units/write.ts';
import { shown } from './problem.ts';
import { type Question, standAlone } from './question.ts';

/** What a value is checked with: its question, its units, the engine's count of cylinders. */
export interface Context {
	readonly question: Question;
	readonly units: readonly (Unit | undefined)[];
	readonly cylinders: number;
}

/** What is wrong with a value, and what is taken; null when nothing is. `soft` is outside the plausible range only. */
export type Fault = { readonly found: string; readonly accepted: string; readonly soft?: boolean } | null;

/** Checks one value against its question. */
export function faultIn(value: unknown, context: Context): Fault {
	const { question } = context;
	switch (question.kind) {
		case 'choice':
			return typeof value === 'string' && Object.hasOwn(question.choices, value)
				? null
				: no(value, choicesOf(question));
		case 'several':
			return severalFault(value, question);
		case 'whole':
			return Number.isInteger(value)
				? rangeFault(value as number, context)
				: no(value, 'a whole number without a unit');
		case 'per-cylinder':
			return perCylinderFault(value, context);
		case 'firing-order':
			return orderFault(value, context);
		case 'pairs':
			return pairsFault(value, context);
		case 'curve':
			return curveFault(value, context);
		case 'loads':
			return loadsFault(value);
		case 'codes':
			return listFault(
				value,
				isCode,
				'trouble codes like "P0340": a letter P, B, C or U, a digit 0-3, three digits 0-9 or A-F',
			);
		case 'circuits':
			return listFault(
				value,
				isCircuit,
				'rows like {"circuit": "check lamp", "from": "", "to": "", "state": "done", "load": 1, "length": 6}; state is done, to-do or not-used; load in A, length in ft',
			);
		case 'teeth':
			return typeof value === 'string' && /^\d{1,3}-\d{1,2}$/.test(value)
				? null
				: no(value, 'a tooth pattern like "36-1"');
		default:
			return isNumber(value)
				? rangeFault(value, context)
				: no(value, `a number (a JSON number, not text)${range(context)}`);
	}
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

const no = (value: unknown, accepted: string): Fault => ({ found: shown(value), accepted });

const choicesOf = (question: Question): string => `one of ${Object.keys(question.choices).join(', ')}`;

function severalFault(value: unknown, question: Question): Fault {
	const accepted = `a list of ${Object.keys(question.choices).join(', ')}, each once; [] for none of them`;
	if (!Array.isArray(value) || new Set(value).size !== value.length) return no(value, accepted);
	const strange = value.find(choice => typeof choice !== 'string' || !Object.hasOwn(question.choices, choice));
	if (strange !== undefined) return no(strange, accepted);
	const alone = value.find(choice => standAlone.includes(choice));
	return alone !== undefined && value.length > 1 ? no(value, `${alone} by itself, or a list without it`) : null;
}

/** The value in kept units; a flow of the other kind at a density good enough to judge its size. */
function keptSize(value: number, { question, units }: Context): number {
	const unit = units[0];
	if (!unit) return value;
	const kept = toKept(value, unit);
	if (!question.takes || unit.kind !== question.takes.kind) return kept;
	const density = typeof question.takes.at === 'number' ? question.takes.at : 745;
	return unit.kind === 'volume-flow' ? kept * density : kept / density;
}

function rangeFault(value: number, context: Context): Fault {
	const { question, units } = context;
	const unit = units[0];
	if (unit) {
		const reading = readParts(value, unit.symbol === '1' ? '' : unit.symbol, { kinds: [unit.kind], shown: unit });
		if (!reading.ok) return { found: shown(value), accepted: reading.problem };
	}
	const kept = keptSize(value, context);
	const beyond = (limits: readonly [number, number] | null) => {
		if (!limits) return false;
		const slack = 1e-9 * Math.max(Math.abs(limits[0]), Math.abs(limits[1]));
		return kept < limits[0] - slack || kept > limits[1] + slack;
	};
	const found = unit ? writeInFull(value, unit) : shown(value);
	if (beyond(question.hard)) return { found, accepted: written(question.hard!, unit) };
	if (beyond(question.plausible))
		return { found, accepted: `usually ${written(question.plausible!, unit)}`, soft: true };
	return null;
}

function written([low, high]: readonly [number, number], unit: Unit | undefined): string {
	// A wire gauge is a whole number; its ends are rounded to what is surely inside.
	const tidy = (typed: number) => (unit?.curve ? Math.round(typed) : Number(typed.toPrecision(4)));
	const one = (kept: number) => (unit ? tidy(fromKept(kept, unit)) : kept);
	const ends = [one(low), one(high)].sort((a, b) => a - b);
	return `${ends[0]} to ${ends[1]}${unit && unit.symbol !== '1' ? ` ${unit.symbol}` : ''}`;
}

function range({ question, units }: Context): string {
	return question.hard ? `, ${written(question.hard, units[0])}` : '';
}

function perCylinderFault(value: unknown, context: Context): Fault {
	const { cylinders } = context;
	const accepted = `${cylinders} readings in cylinder order, null for one that could not be measured, not all null`;
	if (!Array.isArray(value) || value.length !== cylinders || value.every(item => item === null))
		return no(value, accepted);
	let soft: Fault = null;
	for (const item of value) {
		if (item === null) continue;
		if (!isNumber(item)) return no(item, accepted);
		const fault = rangeFault(item, context);
		if (fault && !fault.soft) return fault;
		soft ??= fault;
	}
	return soft;
}

function orderFault(value: unknown, { cylinders }: Context): Fault {
	const every = Array.from({ length: cylinders }, (_, index) => index + 1);
	const right = Array.isArray(value) && value.length === cylinders && every.every(cylinder => value.includes(cylinder));
	return right ? null : no(value, `each of the cylinders 1 to ${cylinders} once`);
}

function pairsFault(value: unknown, { cylinders }: Context): Fault {
	const accepted = `pairs of two cylinders from 1 to ${cylinders}, like [[1, 6], [3, 5]], no cylinder twice`;
	if (!Array.isArray(value) || value.length === 0) return no(value, accepted);
	const seen = new Set<unknown>();
	for (const pair of value) {
		if (!Array.isArray(pair) || pair.length !== 2) return no(pair, accepted);
		for (const cylinder of pair) {
			if (!Number.isInteger(cylinder) || cylinder < 1 || cylinder > cylinders || seen.has(cylinder))
				return no(pair, accepted);
			seen.add(cylinder);
		}
	}
	return null;
}

/** The most points, rows or codes that one answer holds. */
const most = 500;

function curveFault(value: unknown, { units }: Context): Fault {
	const accepted = 'points [[x, y], ...], 2 or more, x rising, none under 0';
	if (!Array.isArray(value) || value.length < 2 || value.length > most) return no(value, accepted);
	let before = Number.NEGATIVE_INFINITY;
	for (const point of value) {
		if (!Array.isArray(point) || point.length !== 2 || !point.every(item => isNumber(item) && item >= 0))
			return no(point, accepted);
		const x = toKept(point[0], units[0]!);
		if (!(x > before)) return no(point, accepted);
		if (!Number.isFinite(toKept(point[1], units[1]!))) return no(point, accepted);
		before = x;
	}
	return null;
}

function loadsFault(value: unknown): Fault {
	const fits = (row: unknown) =>
		Array.isArray(row) &&
		row.length === 2 &&
		typeof row[0] === 'string' &&
		row[0].trim() !== '' &&
		isNumber(row[1]) &&
		row[1] >= 0 &&
		row[1] <= 1000;
	return listFault(value, fits, 'rows like ["fans", 28]: a name and an amount of 0 to 1000');
}

function listFault(value: unknown, fits: (item: unknown) => boolean, accepted: string): Fault {
	if (!Array.isArray(value) || value.length > most) return no(value, `a list of ${accepted}`);
	const strange = value.find(item => !fits(item));
	return strange === undefined && value.every(fits) ? null : no(strange, accepted);
}

const isCode = (item: unknown): boolean => typeof item === 'string' && /^[PBCU][0-3][0-9A-F]{3}$/.test(item);

const circuitKeys = ['circuit', 'from', 'to', 'state', 'load', 'length'];

function isCircuit(item: unknown): boolean {
	if (item === null || typeof item !== 'object' || Array.isArray(item)) return false;
	const row = item as Record<string, unknown>;
	const text = (key: string) => row[key] === undefined || typeof row[key] === 'string';
	const size = (key: string, high: number) =>
		row[key] === undefined || (isNumber(row[key]) && row[key] >= 0 && row[key] <= high);
	return (
		Object.keys(row).every(key => circuitKeys.includes(key)) &&
		typeof row.circuit === 'string' &&
		row.circuit.trim() !== '' &&
		['done', 'to-do', 'not-used'].includes(row.state as string) &&
		text('from') &&
		text('to') &&
		size('load', 1000) &&
		size('length', 1000)
	);
}
