import type { Assessment } from '../../audit/assess.ts';
import type { Audit } from '../../audit/audit.ts';
import { slotNamed } from '../../graph/graph.ts';
import { type Block, paragraph } from '../document.ts';

/** Over figures that rest on a fit: of which log; or that the log fits no car of these answers. */
export function fittedTo({ fit }: Audit): Block[] {
	if (!fit) return [];
	const logs = `the ${fit.days.length === 1 ? 'log' : 'logs'} of ${fit.days.join(', ')}`;
	const out = fit.left_out.map(({ log }) => ` Left out, for it fits no car of these answers: ${log}.`).join('');
	return [
		paragraph(
			fit.applied
				? `Fitted to ${logs}. --unfitted shows the figures without it.${out}`
				: `Not fitted: ${logs} fits no car of these answers. The log's own report says what to look at.`,
		),
	];
}

/** At one figure: of which log it rests on the fit; nothing where the fit did not move it. */
export function fittedMark(
	{ audit: { fit }, fits, state }: Pick<Assessment, 'audit' | 'fits' | 'state'>,
	id: string,
): string {
	if (!fit?.applied || !fits.moved.has(slotNamed(state.graph, id))) return '';
	return `, fitted to the ${fit.days.length === 1 ? 'log' : 'logs'} of ${fit.days.join(', ')}`;
}
