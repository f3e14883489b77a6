import type { Question } from '../../sheet/question.ts';
import type { Answer } from '../../sheet/sheet.ts';

/** What is wrong with a list that was typed, in the words of whoever types it; null where the sheet's own words do. */
export function listRefusal({ kind }: Question, { value, unit }: Answer, cylinders: number): string | null {
	const rows = value as readonly never[];
	switch (kind) {
		case 'per-cylinder':
			return readings(rows as readonly (number | null)[], cylinders);
		case 'firing-order':
			return order(rows as readonly number[], cylinders);
		case 'pairs':
			return pairs(rows as readonly (readonly number[])[], cylinders);
		case 'curve':
			return curve(rows as readonly (readonly [number, number])[], [unit].flat().map(String));
		case 'codes': {
			const strange = (rows as readonly string[]).find(code => !/^[PBCU][0-3][0-9A-F]{3}$/.test(code));
			return strange === undefined
				? null
				: `${JSON.stringify(strange)} is no trouble code: P, B, C or U and four more, as P0340.`;
		}
		default:
			return null;
	}
}

function readings(values: readonly (number | null)[], cylinders: number): string | null {
	return values.length === cylinders
		? null
		: `${counted(values.length, 'reading')}, ${cylinders} wanted; - for a cylinder you could not measure.`;
}

function order(values: readonly number[], cylinders: number): string | null {
	const strange = values.find(cylinder => !(cylinder >= 1 && cylinder <= cylinders));
	if (strange !== undefined) return `Cylinder ${strange} is none of 1 to ${cylinders}.`;
	const twice = values.find((cylinder, at) => values.indexOf(cylinder) < at);
	if (twice !== undefined) return `Cylinder ${twice} stands there twice.`;
	return values.length === cylinders ? null : `${counted(values.length, 'cylinder')}, ${cylinders} wanted.`;
}

function pairs(values: readonly (readonly number[])[], cylinders: number): string | null {
	const all = values.flat();
	const strange = all.find(cylinder => !(cylinder >= 1 && cylinder <= cylinders));
	if (strange !== undefined) return `Cylinder ${strange} is none of 1 to ${cylinders}.`;
	const twice = all.find((cylinder, at) => all.indexOf(cylinder) < at);
	return twice === undefined ? null : `Cylinder ${twice} stands there twice: each has one coil.`;
}

function curve(points: readonly (readonly [number, number])[], [x, y]: readonly string[]): string | null {
	if (points.length < 2) return 'One point is no curve: two or more, a comma after each.';
	const below = points.find(([a, b]) => a < 0 || b < 0);
	if (below) return `${below[0]} ${x}, ${below[1]} ${y}: none may be under 0.`;
	const at = points.findIndex(([a], index) => index > 0 && a <= points[index - 1]![0]);
	return at < 0 ? null : `${points[at]![0]} ${x} comes after ${points[at - 1]![0]} ${x}; ${x} must rise.`;
}

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
