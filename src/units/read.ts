import type { Kind } from './kinds.ts';
import { unitNamed } from './names.ts';
import { type Numeral, numeralAt } from './numeral.ts';
import { wrongUnit } from './refuse.ts';
import { plainText, quoted } from './spelling.ts';
import { dash, dashSize } from './tables/dash.ts';
import { gauge, wireGauge } from './tables/wire.ts';
import { toCanonical, type Unit } from './unit.ts';
import { acceptedInWords } from './words.ts';
import { writeInFull } from './write.ts';

/** What a number is asked as. */
export type Asked = {
	/** The kinds taken; any, if left out. A flow may be asked as a mass or a volume; the caller then states the density. */
	readonly kinds?: readonly Kind[];
	/** The unit that a number without one is in. Left out: only bare ratios and counts go without. */
	readonly shown?: Unit;
	/** True where the number may be below zero: then a bare `-6` is minus six and no dash size. */
	readonly signed?: boolean;
};

/** A number read: in its own unit as typed, and in the unit its kind is kept in. Both are finite. */
export type Reading = {
	readonly ok: true;
	readonly value: number;
	readonly typed: number;
	readonly unit: Unit;
	/** What a person must hear about it. */
	readonly remark?: string;
};

/** Why nothing was read: what was found and what is taken. Two readings when only the person knows which. */
export type Refusal = {
	readonly ok: false;
	readonly problem: string;
	readonly ambiguous?: readonly [Reading, Reading];
};

/** No number is longer; a pasted page is. */
const longest = 200;

/** Reads one number as people type it, with or without a unit: `14.7 psi`, `35 thou`, `1,5 bar`, `3/8 in`, `-6 AN`. */
export function readNumber(text: string, asked: Asked): Reading | Refusal {
	if (text.length > longest) return refusal(`${quoted(text)} is too long for one number. ${taken(asked)}`);
	const plain = plainText(text);
	if (plain === '') return refusal(`Nothing was typed. ${taken(asked)}`);
	const size = sizeIn(plain, asked);
	if (size) return measured(size.number, size.unit);
	const numeral = numeralAt(plain);
	return numeral ? readNumeral(numeral, numeral.rest, plain, asked) : refusal(noNumber(text, asked));
}

/** Reads a numeral with a unit's spelling. `whole` is the text it came from, for the refusal. */
export function readNumeral(numeral: Numeral, spelling: string, whole: string, asked: Asked): Reading | Refusal {
	const [first, second] = numeral.readings;
	if (first === undefined) return refusal(`${quoted(whole)} is not one number. ${taken(asked)}`);
	// `1` is a unit in a sheet; behind a typed number it is a second number.
	if (hasNumber(spelling) && (unitNamed(spelling)?.symbol ?? '1') === '1') {
		return refusal(`${quoted(whole)} holds two numbers; one is wanted, without a gap in it. ${taken(asked)}`);
	}
	const reading = readParts(first, spelling, asked);
	const other = second === undefined ? undefined : readParts(second, spelling, asked);
	if (!(reading.ok && other?.ok)) return reading;
	const [one, two] = [reading, other].map(({ typed, unit }) => writeInFull(typed, unit));
	return {
		ok: false,
		problem: `${quoted(whole)} can mean ${one} or ${two}. Type it without a comma, with a point for the decimals.`,
		ambiguous: [reading, other],
	};
}

/** Takes a number and a unit's spelling that are already apart, as in a sheet. An empty spelling means the shown unit. */
export function readParts(typed: number, spelling: string, asked: Asked): Reading | Refusal {
	if (!Number.isFinite(typed)) return refusal(`The number is too large or not a number. ${taken(asked)}`);
	const unit = spelling === '' ? unspelt(asked) : unitNamed(spelling, asked.kinds);
	return unit ? measured(typed, unit) : refusal(wrongUnit(typed, spelling, asked.kinds));
}

function unspelt({ shown, kinds }: Asked): Unit | undefined {
	return shown ?? unitNamed('1', kinds) ?? unitNamed('', kinds);
}

function measured(typed: number, unit: Unit): Reading | Refusal {
	const problem = unit.refuses?.(typed);
	if (problem) return refusal(`${quoted(`${typed} ${unit.symbol}`)}: ${problem}.`);
	const value = toCanonical(typed, unit);
	if (!Number.isFinite(value)) return refusal(`${typed} ${unit.symbol} is too large.`);
	const remark = unit.remark?.(typed);
	return { ok: true, value, typed, unit, ...(remark === undefined ? {} : { remark }) };
}

/** The sizes that are names more than numbers: dash sizes and wire gauges. */
function sizeIn(plain: string, { kinds, shown, signed = false }: Asked): { number: number; unit: Unit } | undefined {
	const dashed = kinds?.includes('length') ? dashSize(plain, signed || shown?.kind !== 'length') : undefined;
	if (dashed !== undefined) return { number: dashed, unit: dash };
	const gauged = kinds?.includes('area') ? wireGauge(plain, shown === gauge) : undefined;
	return gauged === undefined ? undefined : { number: gauged, unit: gauge };
}

/** A digit that no letter or sign of a unit stands before: `cm3` and `kg/m3` have none, `psi 160` and `- 152` have. */
function hasNumber(spelling: string): boolean {
	return /(?:^|[^a-z0-9/^)])\d/i.test(spelling);
}

/** What to say of a text that begins with no number. */
export function noNumber(text: string, asked: Asked): string {
	return `${quoted(text)} does not begin with a number. ${taken(asked)}`;
}

export function refusal(problem: string): Refusal {
	return { ok: false, problem };
}

/** What to type instead. */
function taken({ kinds, shown }: Asked): string {
	const bare = !shown || shown.symbol === '' || shown.symbol === '1' ? '' : `; no unit means ${shown.symbol}`;
	return `Type one number, ${acceptedInWords(kinds)}${bare}.`;
}
