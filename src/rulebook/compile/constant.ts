import type { Kind } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { spreadToKept, toKept, type Unit } from '../../units/unit.ts';
import { type Placed, quote } from './fields.ts';
import type { Source } from './source.ts';

/** A number with its unit, as written in a rule file. */
export interface Constant {
	/** In the kept unit of its kind. */
	readonly value: number;
	/** As written. */
	readonly typed: number;
	readonly kind: Kind;
	readonly unit: Unit;
}

const written = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(\S.*)?$/i;

/** Reads a constant; with kinds, its unit must be of one of them. A bare number is a ratio or a count. */
export function readConstant(source: Source, { text, offset }: Placed, kinds: readonly Kind[] | null): Constant | null {
	const [, digits, word = ''] = written.exec(text.trim()) ?? [];
	const typed = Number(digits);
	if (digits === undefined || !Number.isFinite(typed)) {
		source.report(offset, `${quote(text)} is not a number with its unit`);
		return null;
	}
	const bare = kinds?.includes('count') ? '' : '1';
	const unit =
		word === '' && kinds && !kinds.some(kind => kind === 'ratio' || kind === 'count')
			? undefined
			: unitNamed(word || bare, kinds ?? undefined);
	if (!unit) {
		source.report(
			offset,
			`${quote(text)}: ${word ? `${quote(word)} is no unit` : 'a unit is needed'}${kinds ? ` of ${kinds.join(' or ')}` : ''}`,
		);
		return null;
	}
	return { value: toKept(typed, unit), typed, kind: unit.kind, unit };
}

/** Reads how far off a value may be: a difference in its kind, or `%` of it (for bare ratios, % is a difference too). */
export function readSpread(source: Source, placed: Placed, kind: Kind): { by: number; relative: boolean } {
	const share = /^([\d.]+)\s*%$/.exec(placed.text);
	if (share && kind !== 'ratio') return { by: Number(share[1]) / 100, relative: true };
	const read = readConstant(source, placed, [kind]);
	return { by: read ? spreadToKept(read.typed, read.unit) : 0, relative: false };
}
