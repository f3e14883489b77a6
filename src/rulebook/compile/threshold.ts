import type { Threshold } from '../rulebook.ts';
import { isConstant, readConstant } from './constant.ts';
import { partNames } from './each.ts';
import { compileExpression } from './expression.ts';
import { type Fields, type Placed, quote } from './fields.ts';
import type { Names, Type } from './names.ts';
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
		return { value: ['value', value], kind, ...(kind === 'ratio' ? { unit: unit.symbol } : {}) };
	}
	const compiled = compileExpression(source, placed, names);
	if (!compiled) return null;
	const { tree, type } = compiled;
	return { value: tree, kind: type.is === 'number' ? type.kind : type.is === 'text' ? 'words' : type.is };
}

/** What a threshold may be used as. */
export function typeOfThreshold({ kind }: Threshold): Type {
	if (kind === 'words') return { is: 'text', choices: null };
	if (kind === 'yes-no') return { is: 'yes-no' };
	if (kind === 'list') return { is: 'list', choices: null };
	return { is: 'number', kind };
}
