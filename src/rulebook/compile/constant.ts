import type { Kind } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { spreadToCanonical, toCanonicalRounded, type Unit } from '../../units/unit.ts';
import { type Placed, quote } from './fields.ts';
import type { Source } from './source.ts';

/** A number with its unit, as written in a rule file. */
export interface Constant {
	/** In the canonical unit of its kind. */
	readonly value: number;
	/** As written. */
	readonly typed: number;
	readonly kind: Kind;
	readonly unit: Unit;
}

const written = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(\S.*)?$/i;
const operator = /^[-+*/<>=!&|?]/;

/** Whether a text is meant as a number with its unit: `5 %`, `0.2 V`; not `1.5 * injectors.dead_time`. */
export function isConstant(text: string): boolean {
	const found = written.exec(text.trim());
	return found !== null && !operator.test(found[2] ?? '');
}

/** Reads a constant; with kinds, its unit must be of one of them. A bare number is a ratio or a count. */
export function readConstant(source: Source, { text, offset }: Placed, kinds: readonly Kind[] | null): Constant | null {
	const refuse = (message: string): null => {
		source.report(offset, `${quote(text)}${message}`);
		return null;
	};
	const [, digits, word = ''] = written.exec(text.trim()) ?? [];
	const typed = Number(digits);
	if (digits === undefined) return refuse(' is not a number with its unit');
	const unit = unitOf(word, kinds);
	if (!unit) {
		const what = word ? `: ${quote(word)} is no unit` : ': a unit is needed';
		return refuse(`${what}${kinds ? ` of ${kinds.join(' or ')}` : ''}`);
	}
	const fault = unit.refuses?.(typed);
	if (fault) return refuse(`: ${fault}`);
	const value = toCanonicalRounded(typed, unit);
	return Number.isFinite(value) ? { value, typed, kind: unit.kind, unit } : refuse(' is too large');
}

/** The unit of a word; none at all is the bare unit where a bare number is taken. */
function unitOf(word: string, kinds: readonly Kind[] | null): Unit | undefined {
	if (word !== '') return unitNamed(word, kinds ?? undefined);
	if (kinds?.includes('count')) return unitNamed('', ['count']);
	return kinds === null || kinds.includes('ratio') ? unitNamed('1', ['ratio']) : undefined;
}

/** Reads how far off a value may be: a difference in its kind, or `%` of it (for bare ratios, % is a difference too). */
export function readSpread(source: Source, placed: Placed, kind: Kind): { by: number; relative: boolean } {
	const share = /^(\d+\.?\d*|\.\d+)\s*%$/.exec(placed.text);
	if (share && kind !== 'ratio') return { by: Number(share[1]) / 100, relative: true };
	const read = readConstant(source, placed, [kind]);
	if (read && (read.typed < 0 || read.unit.curve))
		source.report(
			placed.offset,
			`${quote(placed.text)}: a spread is a difference, 0 or more, in a unit with even steps`,
		);
	return { by: !read || read.unit.curve ? 0 : spreadToCanonical(read.typed, read.unit), relative: false };
}
