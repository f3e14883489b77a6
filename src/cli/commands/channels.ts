import type { Channel } from '../../log/channel.ts';
import { canonicalUnits } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { fromCanonical } from '../../units/unit.ts';
import { readRulebook } from '../assets/assets.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';

/** `swap-audit channels`: what a column of a log can be, and the headers it is known by. */
export function channels(flags: { readonly json?: boolean }): number {
	const { channels } = readRulebook().rulebook;
	if (flags.json) print(JSON.stringify(channels.map(asJson), null, 2));
	else print(channels.map(inWords).join('\n\n'));
	return exit.done;
}

const asJson = ({ id, title, kind, units, known, range }: Channel) => ({
	channel: id,
	title,
	kind,
	/** The unit of `range`, and of the channel wherever it is reported in JSON. */
	unit: canonicalUnits[kind],
	units,
	headers: known,
	range,
});

function inWords({ id, title, kind, units, known, range }: Channel): string {
	const unit = units.map(name => unitNamed(name, [kind])).find(found => found !== undefined);
	const ends = range.map(end => Number((unit ? fromCanonical(end, unit) : end).toPrecision(4))).join(' to ');
	return [
		`${id}: ${title}`,
		...(units.length > 0 ? [`  units: ${units.join(', ')}, and every other one of its kind`] : []),
		...(id === 'time' ? [] : [`  range: ${ends}${unit && unit.symbol !== '1' ? ` ${unit.symbol}` : ''}`]),
		`  headers: ${known.join(', ')}`,
	].join('\n');
}
