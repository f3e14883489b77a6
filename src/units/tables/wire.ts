import { inch } from '../defined.ts';
import { type Unit, unitTable } from '../unit.ts';

/** 4/0 is the fattest gauge, 40 the finest in the table; 1/0 is gauge 0, 2/0 is -1. */
const [fattest, finest] = [-3, 40];

/** Copper area of a solid wire, m2. Source: ASTM B258, diameter 0.005 in x 92^((36 - n) / 39). */
function area(gauge: number): number {
	const diameter = 0.005 * inch * 92 ** ((36 - gauge) / 39);
	return (Math.PI / 4) * diameter ** 2;
}

function gaugeOf(area: number): number {
	const diameter = Math.sqrt(area / (Math.PI / 4));
	return 36 - (39 * Math.log(diameter / (0.005 * inch))) / Math.log(92);
}

function gaugeText(gauge: number): string {
	return gauge > 0 ? String(gauge) : `${1 - gauge}/0`;
}

/** A metric wire falls between two gauges: both are named, fatter first. */
function writeGauge(gauge: number): string {
	const nearest = Math.round(gauge);
	if (Math.abs(gauge - nearest) < 0.02) return `${gaugeText(nearest)} AWG`;
	return `${gaugeText(Math.floor(gauge))} to ${gaugeText(Math.ceil(gauge))} AWG`;
}

export const gauge: Unit = unitTable('area', {
	AWG: {
		curve: { toCanonical: area, fromCanonical: gaugeOf },
		partner: 'mm2',
		also: ['ga', 'gauge', 'gage', 'B&S'],
		refuses: size =>
			Number.isInteger(size) && size >= fattest && size <= finest
				? undefined
				: `wire gauges are whole numbers from 4/0 to ${finest}`,
		write: writeGauge,
	},
})[0]!;

export const areas = [
	gauge,
	...unitTable('area', {
		mm2: { factor: 1e-6, partner: 'AWG', also: ['sq mm', 'square mm', 'mm sq', 'qmm'] },
		cm2: { factor: 1e-4, partner: 'sq in', also: ['sq cm', 'square cm'] },
		m2: { factor: 1, partner: 'sq in', also: ['sq m', 'square m'] },
		'sq in': { factor: inch ** 2, partner: 'cm2', also: ['in2', 'square inch', 'square inches'] },
	}),
];

const sized = /^(?:(awg|no|#)[ -]{0,2})?([1-4]\/0|0{1,4}|\d{1,2})[ -]{0,2}(awg|ga|gauge|gage)?$/i;

/**
 * The gauge in `10 AWG`, `AWG 10`, `#10`, `2/0`, `00 ga`: 2/0 and 00 are both -1. A bare `10` or `00` is one
 * only where gauges are what is asked (`assumed`); 1/0 to 4/0 can be nothing else.
 */
export function wireGauge(text: string, assumed: boolean): number | undefined {
	const [, before, size = '', after] = sized.exec(text) ?? [];
	if (size.endsWith('/0')) return 1 - Number(size[0]);
	if (!(before || after || (assumed && size))) return undefined;
	return /^0+$/.test(size) ? 1 - size.length : Number(size);
}
