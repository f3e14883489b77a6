import { fromCanonical, toCanonical, type Unit } from '../units/unit.ts';
import { rangeFault } from './check-number.ts';
import { type Context, type Fault, faultOf, isNumber, mostItems } from './fault.ts';
import { type Question, standAlone } from './question.ts';

/** Some of the choices, each once; `none` and its like stand alone. */
export function severalFault(value: unknown, question: Question): Fault {
	const refused = (found: unknown): Fault =>
		faultOf(found, `a list of ${Object.keys(question.choices).join(', ')}, each once; [] for none of them`);
	if (!Array.isArray(value) || new Set(value).size !== value.length) return refused(value);
	const strange = value.findIndex(choice => typeof choice !== 'string' || !Object.hasOwn(question.choices, choice));
	if (strange >= 0) return refused(value[strange]);
	const alone = value.find(choice => standAlone.includes(choice));
	return alone !== undefined && value.length > 1 ? faultOf(value, `${alone} by itself, or a list without it`) : null;
}

/** One reading a cylinder, each in its range; the first that is outside the plausible one is reported. */
export function perCylinderFault(value: unknown, context: Context): Fault {
	const { cylinders } = context;
	const accepted = `${cylinders} readings in cylinder order, null for one that could not be measured, not all null`;
	if (!Array.isArray(value) || value.length !== cylinders || value.every(item => item === null))
		return faultOf(value, accepted);
	let soft: Fault = null;
	for (const item of value) {
		if (item === null) continue;
		if (!isNumber(item)) return faultOf(item, accepted);
		const fault = rangeFault(item, context);
		if (fault && !fault.soft) return fault;
		soft ??= fault;
	}
	return soft;
}

/** Each cylinder once. */
export function orderFault(value: unknown, { cylinders }: Context): Fault {
	const every = Array.from({ length: cylinders }, (_, index) => index + 1);
	const right = Array.isArray(value) && value.length === cylinders && every.every(cylinder => value.includes(cylinder));
	return right ? null : faultOf(value, `each of the cylinders 1 to ${cylinders} once`);
}

/** Pairs of cylinders that share a coil, no cylinder twice. */
export function pairsFault(value: unknown, { cylinders }: Context): Fault {
	const accepted = `pairs of two cylinders from 1 to ${cylinders}, like [[1, 6], [3, 5]], no cylinder twice`;
	if (!Array.isArray(value) || value.length === 0) return faultOf(value, accepted);
	const seen = new Set<unknown>();
	for (const pair of value) {
		if (!Array.isArray(pair) || pair.length !== 2) return faultOf(pair, accepted);
		for (const cylinder of pair) {
			if (!Number.isInteger(cylinder) || cylinder < 1 || cylinder > cylinders || seen.has(cylinder))
				return faultOf(pair, accepted);
			seen.add(cylinder);
		}
	}
	return null;
}

/** More than any gauge or meter on a car reads, in canonical units: a point beyond it is a slip. */
const mostOf: Readonly<Record<string, number>> = {
	voltage: 100,
	pressure: 5e6,
	'mass-flow': 5,
	'volume-flow': 5e-3,
};

/** Two points or more, x rising. */
export function curveFault(value: unknown, { units }: Context): Fault {
	const accepted = `points [[x, y], ...], 2 to ${mostItems}, x rising, none under 0`;
	if (!Array.isArray(value) || value.length < 2 || value.length > mostItems) return faultOf(value, accepted);
	let before = Number.NEGATIVE_INFINITY;
	for (const point of value) {
		if (!Array.isArray(point) || point.length !== 2 || !point.every(item => isNumber(item) && item >= 0))
			return faultOf(point, accepted);
		const [x, y] = units.map((unit, axis) => toCanonical(point[axis], unit!)) as [number, number];
		if (!(x > before)) return faultOf(point, accepted);
		const far = [x, y].findIndex((size, axis) => size > mostIn(units[axis]!));
		if (far >= 0) return faultOf(point, `points up to ${writtenMost(units[far]!)}`);
		before = x;
	}
	return null;
}

const mostIn = (unit: Unit): number => mostOf[unit.kind] ?? Number.MAX_VALUE;
const writtenMost = (unit: Unit): string =>
	`${Number(fromCanonical(mostIn(unit), unit).toPrecision(2))} ${unit.symbol}`;
