import type { Assessment } from '../audit/assess.ts';
import { pinWords, remedy } from '../plugs/remedy.ts';

const columns = ['plug', 'pin', 'left half', 'left', 'right half', 'right', 'meeting', 'do', 'why', 'done'];

/** The plan as rows of a table, for a phone's spreadsheet; the last column is to tick. */
export function pinsTable({ plugs }: Pick<Assessment, 'plugs'>): string[][] {
	if (!plugs) return [columns];
	const { reading, sizes } = plugs;
	const rows = reading.pairs.flatMap(({ rows }) =>
		rows.map(row => {
			const { pair, left, right, met, pin } = row;
			const words = (of: typeof left, half: typeof pair.left) => pinWords(of, half).replace(/^[^:]*: /, '');
			return [
				pair.left.plug,
				pin,
				pair.left.half,
				words(left, pair.left),
				pair.right.half,
				words(right, pair.right),
				met.meeting,
				remedy(row, reading.answered, sizes),
				met.why,
				row.acts.some(({ kind }) => kind === 'done') ? 'yes' : '',
			];
		}),
	);
	return [columns, ...rows];
}
