import type { Channel } from './channel.ts';
import type { ColumnValues } from './column-values.ts';
import { type Scale, scaled, scaleOf } from './scale.ts';

/** A way to read a column as a channel, and what must be said of it. */
export interface Reading {
	readonly scale: Scale;
	readonly notes: readonly string[];
}

/** Why a column cannot be read as the channel that its header names. */
export interface Misfit {
	readonly why: string;
	/** Whether the channel can have no such values; false where only the unit is not known. */
	readonly impossible: boolean;
}

/** The share of the readings that must be possible. */
const minPossible = 0.5;

const inside = ([least, most]: readonly [number, number], value: number): boolean => value >= least && value <= most;

function possible({ range }: Channel, scale: Scale, values: ColumnValues): boolean {
	const [least, most] = range;
	const { sorted } = values;
	let left = minPossible * sorted.length;
	for (let index = 0; left > 0 && index < sorted.length; index++) {
		const value = scaled(scale, sorted[index]!);
		if (value >= least && value <= most) left--;
	}
	return left <= 0;
}

const dividedNote = 'the air-fuel ratio is divided by 14.7, as loggers do on any fuel; @AFR9.81 says otherwise';

/** Reads a column in the unit that its header or the person says. */
export function readInUnit(channel: Channel, unit: string, values: ColumnValues): Reading | Misfit {
	const scale = scaleOf(unit, channel);
	if (!scale) return { why: `${JSON.stringify(unit)} is no unit of ${channel.title}`, impossible: false };
	if (channel.special === 'trim') return readTrim(scale, values);
	if (channel.special === 'retard') return readRetard(scale, values);
	if (!possible(channel, scale, values)) return { why: `its values cannot be ${channel.title}`, impossible: true };
	return { scale, notes: scale.unit === 'AFR' ? [dividedNote] : [] };
}

/** Infers the unit that a header does not say: the only one in which the values lie where those of a drive do. */
export function inferUnit(channel: Channel, name: string, values: ColumnValues): Reading | Misfit {
	if (channel.special === 'trim') return readTrim(null, values);
	if (channel.special === 'retard') return readRetard({ unit: 'deg', factor: 1, offset: 0 }, values);
	// A count has one unit, whose name is empty.
	const usual = channel.units.length === 0 ? [''] : channel.units;
	const units = channel.special === 'lambda' && /afr|air|a\/f/i.test(name) ? ['AFR'] : usual;
	const scales = units.map(unit => scaleOf(unit, channel)!);
	const fitting = scales.filter(
		scale =>
			possible(channel, scale, values) &&
			(!channel.high || inside(channel.high, scaled(scale, values.at(0.98)))) &&
			(!channel.middle || inside(channel.middle, scaled(scale, values.at(0.5)))),
	);
	const found = channel.kind === 'ratio' && channel.special === null ? unitOfRatio(fitting, values) : fitting;
	if (found.length === 1) {
		const [scale] = found as [Scale];
		const notes = scales.length === 1 ? [] : [`its header has no unit; by its values it is ${scale.unit}`];
		return { scale, notes: [...notes, ...(scale.unit === 'AFR' ? [dividedNote] : [])] };
	}
	if (found.length > 1) {
		const choices = found.map(({ unit }) => unit).join(' or ');
		return { why: `its header has no unit, and its values can be ${choices}`, impossible: false };
	}
	return {
		why: `its values cannot be ${channel.title}`,
		impossible: scales.every(scale => !possible(channel, scale, values)),
	};
}

/** Of a ratio without a unit: over 1.5 it is in percent; one that never passes 1.02 is a share. */
function unitOfRatio(scales: readonly Scale[], values: ColumnValues): readonly Scale[] {
	const wanted = values.most > 1.5 ? '%' : values.most <= 1.02 ? '1' : null;
	return wanted === null ? scales : scales.filter(({ unit }) => unit === wanted);
}

/** Fuel trims: percent about 0, percent about 100, or factors about 1. Read as a share about 0. */
function readTrim(written: Scale | null, values: ColumnValues): Reading | Misfit {
	const middle = values.at(0.5);
	const aboutHundred = middle > 60 && middle < 140;
	const aboutOne = values.least > 0.5 && values.most < 1.6 && middle > 0.7;
	if (aboutHundred && (written === null || written.unit === '%')) {
		return { scale: { unit: '%', factor: 0.01, offset: -1 }, notes: ['100 % is taken for no trim'] };
	}
	if (aboutOne && written?.unit !== '%') {
		return { scale: { unit: '1', factor: 1, offset: -1 }, notes: ['1 is taken for no trim'] };
	}
	if (written) return { scale: written, notes: [] };
	if (values.most > 1.5 || values.least < -1.5) {
		return { scale: { unit: '%', factor: 0.01, offset: 0 }, notes: ['its header has no unit; by its values it is %'] };
	}
	return { why: 'its header has no unit, and its values can be % or a share', impossible: false };
}

/** Spark taken out: counted as positive, whichever sign the logger gives it. */
function readRetard(scale: Scale, values: ColumnValues): Reading {
	const negative = values.least < -0.4 && values.most < 0.4;
	return negative
		? { scale: { ...scale, factor: -scale.factor }, notes: ['it is logged as negative; here it counts as positive'] }
		: { scale, notes: [] };
}
