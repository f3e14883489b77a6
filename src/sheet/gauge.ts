import { unitNamed } from '../units/names.ts';
import { gauge as awg, wireGauge } from '../units/tables/wire.ts';
import { toCanonical, type Unit } from '../units/unit.ts';
import { writeInFull } from '../units/write.ts';
import { isNumber } from './fault.ts';

/** A wire's size as it was said: a number of a unit of area, or of AWG (-3 is 4/0). */
export interface Gauge {
	readonly value: number;
	readonly unit: Unit;
}

/** No wire of a plug is thicker, m2. */
const thickest = 500e-6;

/** What a table or a sheet says of a wire's size: `18`, `18 AWG`, `2/0`, `0.75 mm2`; null where it is none. */
export function readGauge(said: unknown): Gauge | null {
	const size = isNumber(said) ? { value: said, unit: awg } : typeof said === 'string' ? inText(said.trim()) : null;
	if (size === null) return null;
	if (size.unit === awg) return awg.refuses?.(size.value) === undefined ? size : null;
	const copper = areaOf(size);
	return copper > 0 && copper <= thickest ? size : null;
}

function inText(text: string): Gauge | null {
	const gauge = wireGauge(text.replace(/\.$/, ''), true);
	if (gauge !== undefined) return { value: gauge, unit: awg };
	const [, digits, word] = /^(\d+(?:[.,]\d+)?)\s*([^\d\s,.].*)$/.exec(text) ?? [];
	const unit = word === undefined ? null : unitNamed(word, ['area']);
	return digits !== undefined && unit && unit !== awg ? { value: Number(digits.replace(',', '.')), unit } : null;
}

/** Copper, m2. */
export const areaOf = ({ value, unit }: Gauge): number => toCanonical(value, unit);

/** As a person writes it: `2/0 AWG`, `0.75 mm2`. */
export const writeGauge = ({ value, unit }: Gauge): string => writeInFull(value, unit);

/** As a sheet keeps it: AWG as a number, else a text. */
export const gaugeInSheet = (gauge: Gauge): number | string => (gauge.unit === awg ? gauge.value : writeGauge(gauge));
