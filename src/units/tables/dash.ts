import { inch } from '../defined.ts';
import { type Unit, unitTable } from '../unit.ts';

/** Sizes made; the trade skips the rest. Source: dimension tables of AN924 and AN929 (to 16); larger ones from memory. */
const sizes = [2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 20, 24, 28, 32];

/** Inches as a fraction: 6 sixteenths are 3/8, 20 are 1 1/4. */
function sixteenths(count: number): string {
	const whole = Math.floor(count / 16);
	let [top, bottom] = [count % 16, 16];
	while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
	return [whole || '', top ? `${top}/${bottom}` : ''].filter(Boolean).join(' ');
}

/**
 * A dash size: sixteenths of an inch of the *outside* of the tube that the fitting was made for.
 * The hole is smaller by two walls, and differs from maker to maker.
 */
export const dash: Unit = unitTable('length', {
	AN: {
		factor: inch / 16,
		partner: 'in',
		also: ['dash', 'JIC'],
		refuses: size => (sizes.includes(size) ? undefined : `there is no dash size ${size}; made are ${sizes.join(', ')}`),
		remark: size => `-${size} is the tube's outside, ${sixteenths(size)} in; measure the bore`,
	},
})[0]!;

const named = /^(?:an|dash)[ -]{0,2}(\d{1,2})$/i;
const suffixed = /^-?(\d{1,2})[ -]{0,2}(?:an|jic)$/i;
const bare = /^-(\d{1,2})$/;

/**
 * The size in `AN6`, `AN-6`, `dash 6`, `6 AN`, `-6AN`, and in a bare `-6` unless the number may be `signed`.
 * A bare -1, -2 or -7 is no dash size that anybody uses for a line: it stays a number.
 */
export function dashSize(text: string, signed: boolean): number | undefined {
	const spelt = named.exec(text) ?? suffixed.exec(text);
	if (spelt) return Number(spelt[1]);
	const size = signed ? undefined : Number(bare.exec(text)?.[1]);
	return size !== undefined && size > 2 && sizes.includes(size) ? size : undefined;
}
