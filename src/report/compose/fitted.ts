import type { Audit } from '../../audit/audit.ts';
import { type Block, paragraph } from '../document.ts';

/** Over figures that rest on a fit: of which log; or that the log fits no car of these answers. */
export function fittedTo({ fit }: Audit): Block[] {
	if (!fit) return [];
	const logs = `the ${fit.days.length === 1 ? 'log' : 'logs'} of ${fit.days.join(', ')}`;
	return [
		paragraph(
			fit.applied
				? `Fitted to ${logs}. --unfitted shows the figures without it.`
				: `Not fitted: ${logs} fits no car of these answers. The log's own report says what to look at.`,
		),
	];
}
