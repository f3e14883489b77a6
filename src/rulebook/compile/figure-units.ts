import type { UnitSet } from '../../sheet/question.ts';
import { mile, pound } from '../../units/defined.ts';
import type { Kind } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';

/** A unit as the texts of the rulebook spell it. */
export interface FigureUnit {
	readonly set: UnitSet;
	/** What it measures; a mass is no kind of the units room, for nobody is asked for one. */
	readonly kind: Kind | 'mass';
	/** Canonical = figure x factor + offset. */
	readonly factor: number;
	readonly offset: number;
	/** What it is turned into for the other unit set. */
	readonly other: string;
}

type Row = readonly [set: UnitSet, kind: Kind | 'mass', other: string];

const rows: Readonly<Record<string, Row>> = {
	in: ['us', 'length', 'mm'],
	ft: ['us', 'length', 'm'],
	mile: ['us', 'length', 'km'],
	miles: ['us', 'length', 'km'],
	psi: ['us', 'pressure', 'bar'],
	mph: ['us', 'velocity', 'km/h'],
	'lb-ft': ['us', 'torque', 'N m'],
	'oz-in': ['us', 'imbalance', 'g-cm'],
	hp: ['us', 'power', 'kW'],
	lb: ['us', 'mass', 'kg'],
	lbf: ['us', 'force', 'N'],
	degF: ['us', 'temperature', 'degC'],
	'lb/h': ['us', 'mass-flow', 'kg/h'],
	'lb/min': ['us', 'mass-flow', 'kg/min'],
	'gal/h': ['us', 'volume-flow', 'L/h'],
	'cu in': ['us', 'volume', 'L'],
	'pulses/mi': ['us', 'pulses', 'pulses/km'],
	'ohm/ft': ['us', 'resistance-per-length', 'ohm/m'],
	mm: ['metric', 'length', 'in'],
	cm: ['metric', 'length', 'in'],
	m: ['metric', 'length', 'ft'],
	km: ['metric', 'length', 'miles'],
	bar: ['metric', 'pressure', 'psi'],
	kPa: ['metric', 'pressure', 'psi'],
	'km/h': ['metric', 'velocity', 'mph'],
	'N m': ['metric', 'torque', 'lb-ft'],
	'g-cm': ['metric', 'imbalance', 'oz-in'],
	kW: ['metric', 'power', 'hp'],
	kg: ['metric', 'mass', 'lb'],
	g: ['metric', 'mass', 'lb'],
	N: ['metric', 'force', 'lbf'],
	degC: ['metric', 'temperature', 'degF'],
	'kg/h': ['metric', 'mass-flow', 'lb/h'],
	'kg/min': ['metric', 'mass-flow', 'lb/min'],
	'L/h': ['metric', 'volume-flow', 'gal/h'],
	'cc/min': ['metric', 'volume-flow', 'gal/h'],
	cc: ['metric', 'volume', 'cu in'],
	L: ['metric', 'volume', 'cu in'],
	'pulses/km': ['metric', 'pulses', 'pulses/mi'],
	'ohm/m': ['metric', 'resistance-per-length', 'ohm/ft'],
};

/** m and kg: sizes that no answer is asked in, so that the tables of units do not have them. */
const exact: Readonly<Record<string, number>> = {
	mile,
	miles: mile,
	km: 1000,
	lb: pound,
	kg: 1,
	g: 0.001,
};

/** The units that a figure of a text may have, by their spelling there. */
export const figureUnits: Readonly<Record<string, FigureUnit>> = Object.fromEntries(
	Object.entries(rows).map(([symbol, [set, kind, other]]) => {
		const { factor, offset } =
			symbol in exact ? { factor: exact[symbol]!, offset: 0 } : unitNamed(symbol, [kind as Kind])!;
		return [symbol, { set, kind, factor, offset, other }];
	}),
);

/** Longest first, so that `lb-ft` is not read as `lb`. */
export const spelledUnits: string = Object.keys(rows)
	.sort((a, b) => b.length - a.length)
	.join('|');
