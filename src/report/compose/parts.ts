import { partsFor } from '../../audit/parts.ts';
import { sureEnough } from '../../audit/unproved.ts';
import { type Block, heading, listed } from '../document.ts';
import type { ReportContext } from './context.ts';

/** Parts to get for the next stage, merged over the lines that surely fail: what is doubtful is measured first. None for what only tidies up. */
export function parts({ lines, next, model }: ReportContext): Block[] {
	const stage = lines.find(other => other.stage === next && next !== 'tidy');
	const sure = stage?.fails.filter(({ sure }) => sure === null || sure >= sureEnough) ?? [];
	return listed(
		[heading(2, 'Parts to get')],
		partsFor(sure, model.rulebook).map(({ words, purposes }) => [`${words}: ${purposes.join('; ')}.`]),
	);
}
