import { type WiringRow, worksheet } from '../../audit/worksheet.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { stages } from '../../sheet/stage.ts';
import { textIn } from '../../sheet/text.ts';
import { unitNamed } from '../../units/names.ts';
import { shownUnit } from '../../units/shown.ts';
import { toCanonical } from '../../units/unit.ts';
import { write } from '../../units/write.ts';
import { type Block, type Inline, listed, paragraph, type Section, strong } from '../document.ts';
import type { ReportContext } from './context.ts';
import { count } from './names.ts';

export const columns = [
	'circuit',
	'from',
	'to',
	'state',
	'load',
	'length',
	'wire',
	'fuse',
	'usual way',
] as const satisfies readonly string[];

/** The cells of a row in words, by column; a blank is for the person to fill in. */
export function cells(row: WiringRow, units: UnitSet): Record<(typeof columns)[number], string> {
	const { circuit, from, to, state, load, loadAssumed, length, fuse, words } = row;
	return {
		circuit,
		from,
		to,
		state,
		load: load === null ? '' : `${load} A${loadAssumed ? ' (usual)' : ''}`,
		length: length === null ? '' : write(length, unitNamed(units === 'us' ? 'ft' : 'm', ['length'])!),
		wire: wireWords(row, units),
		fuse: fuse === null ? '' : `${fuse} A`,
		'usual way': textIn(words, units),
	};
}

/** The wire's size, or what is needed to say it. */
function wireWords({ gauge, length, load }: WiringRow, units: UnitSet): string {
	if (gauge !== null) return write(toCanonical(gauge, unitNamed('AWG', ['area'])!), shownUnit('area', units));
	if (!length) return 'length needed';
	return load ? 'thicker than 4/0' : 'load needed';
}

/** The wiring worksheet: a line a circuit, open ones first; of those that nobody noted only what the next stage wants. */
export function wiring(context: ReportContext): Section | null {
	const all = worksheet(context);
	if (all.length === 0) return null;
	return { title: 'The wiring worksheet', compose: () => circuits(all, context) };
}

function circuits(all: readonly WiringRow[], { next, wording }: ReportContext): Block[] {
	const until = next === null ? 0 : stages.indexOf(next) + 1;
	const rows = all.filter(
		({ state, stage }) => state !== 'not noted' || (stage !== null && stages.indexOf(stage) < until),
	);
	const isOpen = ({ state }: WiringRow) => state === 'to-do' || state === 'not noted';
	const line = (row: WiringRow) => words(row, wording.units);
	return [
		paragraph(
			'Wire sizes are for a loss of 0.4 V out and back, 105 degC insulation in an engine space; a usual load is a usual figure, not yours.',
		),
		...rows.filter(isOpen).map((row): Block => ({ is: 'task', text: line(row), details: [] })),
		...listed([], rows.filter(row => !isOpen(row)).map(line)),
		...(all.length > rows.length ? [paragraph(leftOut(all.length - rows.length))] : []),
	];
}

const leftOut = (circuits: number): string =>
	`Left out: ${count(circuits, 'usual circuit')} that the next stage does not want and the sheet says nothing of. audit --out NAME.csv has them all.`;

function words(row: WiringRow, units: UnitSet): Inline[] {
	const { circuit, from, to, state, load, length, wire, fuse } = cells(row, units);
	const way =
		from || to ? `${from || '____'} to ${to || '____'}` : cells(row, units)['usual way'] || 'from ____ to ____';
	const size = [load, length, fuse ? `wire ${wire}, fuse ${fuse}` : wire].filter(Boolean).join(', ');
	return [strong(circuit), ` (${state}): ${way.replace(/\.$/, '')}; ${size}.`];
}
