import { readParts } from '../units/read.ts';
import { fromCanonical, toCanonical, type Unit } from '../units/unit.ts';
import { writeInFull } from '../units/write.ts';
import { type Context, type Fault, faultOf, isNumber } from './fault.ts';
import { shown } from './problem.ts';

/** Checks that a value is one number, inside its hard range; outside the plausible one the fault is soft. */
export function numberFault(value: unknown, context: Context): Fault {
	return isNumber(value)
		? rangeFault(value, context)
		: faultOf(value, `a number (a JSON number, not text)${range(context)}`);
}

/** Checks a number against its unit (there is no 7 AN) and the question's two ranges. */
export function rangeFault(value: number, context: Context): Fault {
	const { question, units } = context;
	const unit = units[0];
	if (unit) {
		const reading = readParts(value, unit.symbol, { kinds: [unit.kind], shown: unit });
		if (!reading.ok) return { found: shown(value), accepted: reading.problem };
	}
	const kept = canonicalSize(value, context);
	const tooFar = beyond(kept, question.hard);
	if (!tooFar && !beyond(kept, question.plausible)) return null;
	const found = unit ? writeInFull(value, unit) : shown(value);
	if (tooFar) return { found, accepted: written(question.hard!, context) };
	return { found, accepted: `usually ${written(question.plausible!, context)}`, soft: true };
}

/** A conversion may cost the last digits: an end that is typed is inside. */
function beyond(kept: number, limits: readonly [number, number] | null): boolean {
	if (!limits) return false;
	const slack = 1e-9 * Math.max(Math.abs(limits[0]), Math.abs(limits[1]));
	return kept < limits[0] - slack || kept > limits[1] + slack;
}

/** A density good enough to judge a flow's size where the fuel is not known yet, kg/m3. */
const anyFuel = 745;

/** What turns a number of the question's other kind of flow into its own; 1 for any other number. */
function otherKind({ question, units }: Context): number {
	const unit = units[0];
	if (!unit || unit.kind !== question.takes?.kind) return 1;
	const density = typeof question.takes.at === 'number' ? question.takes.at : anyFuel;
	return unit.kind === 'volume-flow' ? density : 1 / density;
}

function canonicalSize(value: number, context: Context): number {
	const unit = context.units[0];
	return unit ? toCanonical(value, unit) * otherKind(context) : value;
}

/** A range in the unit that the person used, its ends to four digits. */
function written([low, high]: readonly [number, number], context: Context): string {
	const unit = context.units[0];
	if (!unit) return `${low} to ${high}`;
	if (unit.curve) return writtenSizes(fromCanonical(high, unit), fromCanonical(low, unit), unit);
	const [least, most] = [low, high].map(kept => Number(fromCanonical(kept / otherKind(context), unit).toPrecision(4)));
	return `${least} to ${most}${unit.symbol === '1' ? '' : ` ${unit.symbol}`}`;
}

/** Wire gauges are whole numbers, and the thick ones have the small numbers: the sizes that are made and inside. */
function writtenSizes(thickest: number, thinnest: number, unit: Unit): string {
	let [thick, thin] = [Math.ceil(thickest - 1e-6), Math.floor(thinnest + 1e-6)];
	while (unit.refuses?.(thick)) thick++;
	while (unit.refuses?.(thin)) thin--;
	return `${writeInFull(thick, unit)} to ${writeInFull(thin, unit)}`;
}

function range(context: Context): string {
	const { hard } = context.question;
	return hard ? `, ${written(hard, context)}` : '';
}
