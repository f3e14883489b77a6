import type { Kind } from '../units/kinds.ts';
import { unitNamed } from '../units/names.ts';
import { wrongUnit } from '../units/refuse.ts';
import { spreadToCanonical, type Unit } from '../units/unit.ts';
import { acceptedInWords } from '../units/words.ts';
import { faultIn } from './check-value.ts';
import { isNumber, isObject } from './fault.ts';
import { noteProblem, type SheetProblem, shown } from './problem.ts';
import type { Question } from './question.ts';
import { knownBy } from './sheet.ts';

const keys = ['value', 'unit', 'known', 'spread', 'note'];

/** What a check found: what is refused, and what is only odd. */
export interface Found {
	readonly problems: SheetProblem[];
	readonly warnings: SheetProblem[];
}

/** Checks one answer of a sheet against its question, noting every problem and every value outside its plausible range. */
export function checkAnswer(question: Question, answer: unknown, cylinders: number, into: Found): void {
	const path = question.id;
	const refuse = (found: unknown, accepted: string, at = path) =>
		noteProblem(into.problems, { path: at, found: shown(found), accepted });
	if (!isObject(answer)) {
		refuse(answer, 'an object with a value, or with known: "not-known"');
		return;
	}
	const { value, unit, known, spread, note } = answer;
	for (const key of Object.keys(answer))
		if (!keys.includes(key)) refuse(key, `only ${keys.join(', ')}`, `${path}.${key}`);
	if (known !== undefined && !knownBy.includes(known as never))
		refuse(known, `one of ${knownBy.join(', ')}`, `${path}.known`);
	if (note !== undefined && typeof note !== 'string') refuse(note, 'a text', `${path}.note`);
	const exact = question.of.length === 0;
	// A spread that nothing can be done with is reported, and the answer stands.
	if (spread !== undefined && exact)
		into.warnings.push({ path: `${path}.spread`, found: shown(spread), accepted: 'no spread here: this is exact' });
	else if (spread !== undefined && !(isNumber(spread) && spread >= 0))
		refuse(spread, 'a number, 0 or more, in the unit of the value', `${path}.spread`);
	if (known === 'not-known') {
		if (value !== undefined) refuse(value, 'no value beside known: "not-known"', `${path}.value`);
		// The unit that a number had before may stay, for the day when it is known again.
		if (unit !== undefined && exact) refuse(unit, 'no unit here', `${path}.unit`);
		return;
	}
	if (value === undefined) {
		refuse(undefined, 'a value, or known: "not-known"', `${path}.value`);
		return;
	}
	const units = checkUnits(question, value, unit, path, into);
	if (!units) return;
	const fault = faultIn(value, { question, units, cylinders });
	if (fault) (fault.soft ? into.warnings : into.problems).push({ path, found: fault.found, accepted: fault.accepted });
	const strays = units.at(-1);
	if (isNumber(spread) && strays && !strays.curve && !Number.isFinite(spreadToCanonical(spread, strays)))
		refuse(spread, 'a smaller number', `${path}.spread`);
}

/** The unit of each number of the answer, or null after noting what is wrong with them. */
function checkUnits(
	question: Question,
	value: unknown,
	unit: unknown,
	path: string,
	into: Found,
): (Unit | undefined)[] | null {
	const refuse = (found: string, accepted: string): null => {
		into.problems.push({ path: `${path}.unit`, found, accepted });
		return null;
	};
	if (question.of.length === 0) return unit === undefined ? [] : refuse(shown(unit), 'no unit here');
	const words = unit === undefined ? [] : Array.isArray(unit) ? unit : [unit];
	if (words.some(word => typeof word !== 'string')) return refuse(shown(unit), 'a unit as text');
	if (
		unit !== undefined &&
		(words.length !== question.of.length || (Array.isArray(unit) && question.kind !== 'curve'))
	) {
		return refuse(shown(unit), question.kind === 'curve' ? 'two units, one for x and one for y' : 'one unit');
	}
	const units: Unit[] = [];
	for (const [index, kind] of question.of.entries()) {
		const kinds: Kind[] = [kind, ...(question.takes && index === question.of.length - 1 ? [question.takes.kind] : [])];
		const word = (words[index] as string | undefined) ?? bareUnit(question);
		if (word === undefined) return refuse('no unit', acceptedInWords(kinds));
		const found = unitNamed(word, kinds);
		// A unit that is none is reported with what is taken; one of another kind in the words of an interview.
		if (!found)
			return refuse(
				shown(word),
				unitNamed(word) ? wrongUnit(sampleOf(value, index), word, kinds) : acceptedInWords(kinds),
			);
		units.push(found);
	}
	return units;
}

/** A number of the answer to show another unit's reading with: of a list the first. */
function sampleOf(value: unknown, axis: number): number {
	const first = Array.isArray(value) ? value.find(item => item !== null) : value;
	const number = Array.isArray(first) ? first.filter(isNumber)[axis] : first;
	return isNumber(number) ? number : 1;
}

/** Bare ratios take `1` or no unit; compression, gear and axle ratios `:1` or none. Everything else needs its unit. */
function bareUnit(question: Question): string | undefined {
	const shownUnit = question.unit.us[0];
	return shownUnit === '1' || shownUnit === ':1' ? shownUnit : undefined;
}
