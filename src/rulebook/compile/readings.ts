import { canonicalUnits, type Kind } from '../../units/kinds.ts';
import { type Band, type ExpectedReading, readingStates } from '../expected-reading.ts';
import { readConstant } from './constant.ts';
import { compileYesNo } from './expression.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';
import { refuseNames } from './words.ts';

/** What gauges and meters should read (rules/readings.yaml), in the order they are met. */
export function readReadings(root: Fields, names: Names): ExpectedReading[] {
	return root.innerList('readings').map(inner => {
		const title = inner.text('title');
		refuseNames(inner, 'title', title);
		const row = {
			state: inner.oneOf('state', readingStates, 'key-on'),
			reading: inner.text('reading'),
			title,
			when: compileYesNo(inner, 'when', names),
			unless: compileYesNo(inner, 'unless', names),
			answer: numberNamed(inner, 'answer', names)?.id ?? null,
			...(inner.has('usual') ? usual(inner) : figure(inner, names)),
		};
		inner.refuseRest();
		return row;
	});
}

type Value = Pick<ExpectedReading, 'of' | 'value' | 'unit' | 'band' | 'most'>;

/** What every such car reads, with its band. */
function usual(inner: Fields): Value {
	const fields = inner.inner('usual')!;
	const read = (key: string, kinds: readonly Kind[] | null = null) => {
		const placed = fields.has(key) ? fields.placed(key) : null;
		return placed && readConstant(fields.source, placed, kinds);
	};
	const value = read('value');
	const [low, high] = ['low', 'high'].map(key => read(key, value && [value.kind])?.value ?? null) as [
		number | null,
		number | null,
	];
	if (!value) fields.report('value', 'value: a number with its unit is needed here');
	if (low === null) fields.report('low', 'low: a number with its unit is needed here');
	fields.refuseRest();
	const band: Band = { is: 'from-to', low: low ?? 0, high };
	return { of: null, value: value?.value ?? 0, unit: value ? canonicalUnits[value.kind] : '1', band, most: null };
}

/** A figure of this car, with how far off a reading of it may be. */
function figure(inner: Fields, names: Names): Value {
	const of = numberNamed(inner, 'of', names);
	if (!of) inner.report('of', 'of: an answer or a quantity is needed here, or usual');
	const kind = of?.kind ?? 'ratio';
	return {
		of: of?.id ?? null,
		value: 0,
		unit: canonicalUnits[kind],
		band: bandOf(inner, kind),
		most: numberNamed(inner, 'at_most', names)?.id ?? null,
	};
}

function bandOf(inner: Fields, kind: Kind): Band {
	if (inner.has('at_least')) {
		if (inner.text('at_least') !== 'true') inner.report('at_least', 'at_least: true, or leave it out');
		return { is: 'at-least' };
	}
	if (inner.has('share')) return { is: 'share', by: inner.number('share') };
	const placed = inner.placed('within');
	return { is: 'within', by: (placed && readConstant(inner.source, placed, [kind])?.value) ?? 0 };
}

/** An answer or a quantity that is a number; null where the field is not there or names none. */
function numberNamed(inner: Fields, key: string, names: Names): { readonly id: string; readonly kind: Kind } | null {
	const id = inner.text(key, false);
	if (id === '') return null;
	const type = names.get(id);
	if (type?.is === 'number') return { id, kind: type.kind };
	inner.report(key, `${key}: ${quote(id)} is no answer and no quantity that is a number`);
	return null;
}
