import type { Assessment } from '../../audit/assess.ts';
import { type WiringRow, worksheet } from '../../audit/worksheet.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { unitNamed } from '../../units/names.ts';
import { shownUnit } from '../../units/shown.ts';
import { toKept } from '../../units/unit.ts';
import { write } from '../../units/write.ts';
import { type Block, heading, type Inline, paragraph, strong } from '../document.ts';

/** The cells of a row in words: circuit, from, to, state, load, length, wire, fuse. */
export function cells(row: WiringRow, units: UnitSet): string[] {
	const load = row.load === null ? '' : `${row.load} A${row.loadAssumed ? ' (usual)' : ''}`;
	const length = row.length === null ? '' : write(row.length, unitNamed(units === 'us' ? 'ft' : 'm', ['length'])!);
	const area = row.gauge === null ? null : toKept(row.gauge, unitNamed('AWG', ['area'])!);
	const wire =
		area !== null
			? write(area, shownUnit('area', units))
			: row.length === null
				? 'length needed'
				: row.load === null
					? 'load needed'
					: 'thicker than 4/0';
	return [row.circuit, row.from, row.to, row.state, load, length, wire, row.fuse === null ? '' : `${row.fuse} A`];
}

export const columns = ['circuit', 'from', 'to', 'state', 'load', 'length', 'wire', 'fuse'] as const;

/** The wiring worksheet: a line a circuit, open ones first. */
export function wiring(assessment: Assessment): Block[] {
	const rows = worksheet(assessment);
	const line = (row: WiringRow): Inline[] => {
		const [circuit, from, to, state, load, length, wire, fuse] = cells(row, assessment.wording.units) as [
			string,
			string,
			string,
			string,
			string,
			string,
			string,
			string,
		];
		const way = from || to ? `${from || '____'} to ${to || '____'}` : row.words || 'from ____ to ____';
		const size = [load, length, fuse ? `wire ${wire}, fuse ${fuse}` : wire].filter(Boolean).join(', ');
		return [strong(`${circuit}`), ` (${state}): ${way.replace(/\.$/, '')}; ${size}.`];
	};
	const open = rows.filter(({ state }) => state === 'to-do' || state === 'not told');
	const rest = rows.filter(({ state }) => state === 'done' || state === 'not-used');
	if (rows.length === 0) return [];
	return [
		heading(2, 'The wiring worksheet'),
		paragraph(
			'Wire sizes are for a loss of 0.4 V out and back, 105 degC insulation in an engine space; a usual load is a usual figure, not yours.',
		),
		...open.map((row): Block => ({ is: 'task', text: line(row), details: [] })),
		...(rest.length > 0 ? [{ is: 'items', items: rest.map(line) } as const] : []),
	];
}
