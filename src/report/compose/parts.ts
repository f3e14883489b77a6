import type { Assessment } from '../../audit/assess.ts';
import { partsFor } from '../../audit/parts.ts';
import { type Block, heading, listed } from '../document.ts';

/** A line less sure than this is measured first: no part is proposed for it. */
const sureEnough = 0.9;

/** Parts to get, merged over the findings that surely fail; none for what only tidies up. */
export function parts({ audit, model }: Assessment): Block[] {
	const sure = audit.findings.filter(
		({ verdict, stage, sure }) => verdict === 'fails' && stage !== 'tidy' && (sure === null || sure >= sureEnough),
	);
	return listed(
		[heading(2, 'Parts to get')],
		partsFor(sure, model.rulebook).map(({ words, purposes }) => [`${words}: ${purposes.join('; ')}.`]),
	);
}
