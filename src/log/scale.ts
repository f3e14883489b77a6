import type { Kind } from '../units/kinds.ts';
import { unitNamed } from '../units/names.ts';
import { plainText } from '../units/spelling.ts';
import { toCanonical } from '../units/unit.ts';
import type { Channel } from './channel.ts';

/** How cells become readings in the canonical unit. */
export interface Scale {
	/** The unit as reported: `kPa abs`, `AFR`, `%`. */
	readonly unit: string;
	/** A straight line; left out where it is none. */
	readonly factor: number;
	readonly offset: number;
	/** For fuel over air, which is one over lambda. */
	readonly inverse?: true;
}

export const scaled = ({ factor, offset, inverse }: Scale, value: number): number =>
	inverse ? 1 / value : value * factor + offset;

/** Air to fuel at lambda 1 that loggers divide by and multiply with, whatever the fuel is. Common practice. */
const usualRatio = 14.7;

/** The scale of a unit's spelling on a channel; undefined where it is no unit of it. */
export function scaleOf(spelling: string, { kind, special }: Pick<Channel, 'kind' | 'special'>): Scale | undefined {
	const text = plainText(spelling);
	if (special === 'lambda') return lambdaScale(text);
	const unit = unitNamed(text, [kind]) ?? unitNamed(text, near[kind] ?? []);
	if (!unit || unit.curve) return undefined;
	// A psi that is asked as absolute is psia: the column counts from vacuum, and its unit says so too seldom.
	const own = unit.kind === kind ? unit.symbol : unitAs(kind === 'pressure' ? 'gauge' : 'absolute', unit.symbol);
	return { unit: own, factor: toCanonical(1, unit) - toCanonical(0, unit), offset: toCanonical(0, unit) };
}

/** The unit's name as the other reference writes it: psi and psia, kPa and kPa abs. */
export function unitAs(reference: 'absolute' | 'gauge', unit: string): string {
	const bare = unit.replace(/ abs$/, '').replace(/^psia$/, 'psi');
	if (reference === 'gauge') return bare;
	return bare === 'psi' ? 'psia' : `${bare} abs`;
}

/** Kinds whose units have the same size. */
const near: Partial<Record<Kind, Kind[]>> = { 'absolute-pressure': ['pressure'], pressure: ['absolute-pressure'] };

function lambdaScale(text: string): Scale | undefined {
	if (/^(?:lambda|λ|1|)$/i.test(text)) return { unit: 'lambda', factor: 1, offset: 0 };
	if (/^(?:phi|φ)$/i.test(text)) return { unit: 'phi', factor: 1, offset: 0, inverse: true };
	const [whole, ratio] = /^(?:afr|a\/f|air[- ]?fuel ratio|:1)\s*(\d+(?:\.\d+)?)?(?::1)?$/i.exec(text) ?? [];
	if (whole === undefined) return undefined;
	const stoichiometric = ratio === undefined ? usualRatio : Number(ratio);
	return stoichiometric > 0 ? { unit: `AFR${ratio ?? ''}`, factor: 1 / stoichiometric, offset: 0 } : undefined;
}

/** Whether a text in brackets or below a header is the name of a unit, of any kind that a log has. */
export const isUnit = (text: string): boolean =>
	!/^\d*$/.test(text.trim()) &&
	(unitNamed(plainText(text)) !== undefined ||
		/^(?:afr[\d.]*|a\/f|phi|λ|φ|lambda|-|n\/a|none|bool|on\/off|state|text|hh?:mm:ss.*|h:m:s.*|km|hz|count|g|nm)$/i.test(
			text.trim(),
		));
