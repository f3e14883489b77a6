import { quantityInputs, unitOf } from '../../audit/quantity-values.ts';
import { quantities as all } from '../../log/quantities.ts';
import type { AnyQuantity } from '../../quantities/quantity.ts';
import { rangeOf } from '../../quantities/range.ts';
import { textIn } from '../../sheet/text.ts';
import { readRulebook } from '../assets/assets.ts';
import { unknownId } from '../options/suggest.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';

/** `swap-audit quantities [ID]`: each quantity with its formula, range and source, straight from the code. */
export function quantities(id: string | undefined, flags: { readonly json?: boolean }): number {
	const { sources } = readRulebook().rulebook;
	const shown = all.filter(({ kind }) => kind !== 'hidden');
	const chosen = id === undefined ? shown : shown.filter(quantity => quantity.id === id);
	if (id !== undefined && chosen.length === 0) throw unknownId('quantity', id, shown, 'swap-audit quantities');
	const rows = chosen.map(quantity => ({
		id: quantity.id,
		unit: unitOf(quantity),
		nature: quantity.nature,
		label: quantity.label,
		formula: textIn(quantity.formula, 'us'),
		inputs: quantityInputs(quantity),
		range: unitOf(quantity) === null ? null : rangeInWords(quantity),
		source: quantity.source.map(source => sources[source] ?? source),
	}));
	if (flags.json) print(JSON.stringify(rows, null, 2));
	else print(rows.map(inWords).join('\n\n'));
	return exit.done;
}

/** What it can come to, and how far off the relation itself may be. */
function rangeInWords(quantity: AnyQuantity): string | null {
	const range = rangeOf(quantity);
	if (range === null) return null;
	const [least, most] = range.map(end => end && Number(end.toPrecision(6)));
	const can = least === null ? 'any number' : most === null ? `${least} or more` : `${least} to ${most}`;
	const band = 'band' in quantity ? quantity.band : undefined;
	return band ? `${can}; true value x ${band[0].toPrecision(3)} to x ${band[1].toPrecision(3)}` : can;
}

function inWords(row: {
	id: string;
	label: string;
	unit: string | null;
	nature: string;
	formula: string;
	inputs: readonly string[];
	range: string | null;
	source: readonly string[];
}): string {
	return [
		`${row.id}: ${row.label}${row.unit ? ` [${row.unit}]` : ''} (${row.nature})`,
		`  ${row.formula}`,
		...(row.inputs.length > 0 ? [`  from ${row.inputs.join(', ')}`] : []),
		...(row.range ? [`  range: ${row.range}`] : []),
		`  source: ${row.source.join('; ')}`,
	].join('\n');
}
