import { unitNamed } from '../../units/names.ts';
import { shownUnit, type UnitSet } from '../../units/shown.ts';
import { fromCanonical, toCanonical } from '../../units/unit.ts';
import { write } from '../../units/write.ts';
import type { Threshold } from '../rulebook.ts';
import { type Constant, isConstant, readConstant } from './constant.ts';
import { partNames } from './each.ts';
import { compileExpression } from './expression.ts';
import { type Fields, type Placed, quote } from './fields.ts';
import type { Names, Type } from './names.ts';
import { roundLike } from './rounding.ts';
import type { Source } from './source.ts';

/** The thresholds of a rule, by name: constants with their unit, names, expressions. */
export function readThresholds(fields: Fields, names: Names): Record<string, Threshold> {
	const inner = fields.inner('thresholds', false);
	const thresholds: Record<string, Threshold> = {};
	for (const name of inner?.keys() ?? []) {
		const placed = inner!.placed(name);
		if (!/^[a-z][a-z0-9_]*$/.test(name) || partNames.includes(name)) {
			inner!.reportName(
				name,
				`${quote(name)} is not a threshold's name: small letters and _, none of ${partNames.join(', ')}`,
			);
			continue;
		}
		const threshold = placed && readThreshold(fields.source, placed, names);
		if (threshold) thresholds[name] = threshold;
	}
	return thresholds;
}

function readThreshold(source: Source, placed: Placed, names: Names): Threshold | null {
	if (isConstant(placed.text)) {
		const constant = readConstant(source, placed, null);
		if (!constant) return null;
		const { value, kind, unit } = constant;
		const shown = shownRound(constant);
		return {
			value: ['value', value],
			kind,
			...(kind === 'ratio' ? { unit: unit.symbol } : {}),
			...(Object.keys(shown).length > 0 ? { shown } : {}),
		};
	}
	const compiled = compileExpression(source, placed, names);
	if (!compiled) return null;
	const { tree, type } = compiled;
	return { value: tree, kind: type.is === 'number' ? type.kind : type.is === 'text' ? 'words' : type.is };
}

/** As a share: no reading of a gauge in a car is closer. How far and how fast somebody drives, nobody says so closely. */
const closer = 0.02;
const onTheRoad = 0.04;

/** Speeds of the road and vacuum are read in other units than speeds and pressures elsewhere. */
const readIn: readonly Readonly<Record<UnitSet, string>>[] = [
	{ us: 'mph', metric: 'km/h' },
	{ us: 'inHg', metric: 'kPa' },
];

/** A constant as a person says it, where that is not how its kind is shown: 100 mi is 160 km, 1 psi is 0.07 bar. */
function shownRound({ value, typed, kind, unit }: Constant): NonNullable<Threshold['shown']> {
	const said = readIn.find(pair => Object.values(pair).includes(unit.symbol));
	const textIn = (set: UnitSet): string => {
		const own = (said && unitNamed(said[set], [kind])) ?? shownUnit(kind, set);
		if (own.symbol === unit.symbol || own.curve || own.write || value === 0) return write(value, own);
		const most = kind === 'distance' || said?.us === 'mph' ? onTheRoad : closer;
		const round = roundLike(fromCanonical(value, own), String(Math.abs(typed)), kind === 'temperature', most);
		return write(toCanonical(round, own), own);
	};
	const texts = (['us', 'metric'] as const).map(set => [set, textIn(set)] as const);
	return Object.fromEntries(texts.filter(([set, text]) => text !== write(value, shownUnit(kind, set))));
}

/** What a threshold may be used as. */
export function typeOfThreshold({ kind }: Threshold): Type {
	if (kind === 'words') return { is: 'text', choices: null };
	if (kind === 'yes-no') return { is: 'yes-no' };
	if (kind === 'list') return { is: 'list', choices: null };
	return { is: 'number', kind };
}
