import type { Assessment } from '../../audit/assess.ts';
import type { LimitRung } from '../../audit/audit.ts';
import { type Block, heading, type Inline, paragraph, strong } from '../document.ts';
import { figures } from '../pictures/figures.ts';

/** What gives out first: the rungs lowest first, then those that could not be placed. */
export function ladder(assessment: Assessment): Block[] {
	const { audit } = assessment;
	if (audit.limits.length === 0) return [];
	const placed = audit.limits.filter(({ value }) => value !== null);
	const rest = audit.limits.filter(({ value }) => value === null);
	return [
		heading(2, 'What gives out first'),
		...(placed.length > 0 ? [{ is: 'steps', items: placed.map(rung => placedLine(rung, assessment)) } as const] : []),
		...figures(assessment).filter(({ name }) => name === 'limits'),
		...(rest.length > 0
			? [
					paragraph('Not placed yet:'),
					{ is: 'items', items: rest.map(({ title, missing }) => [`${title}: needs ${missing.join(', ')}.`]) } as const,
				]
			: []),
	];
}

export function placedLine(rung: LimitRung, { wording }: Assessment): Inline[] {
	const show = (value: number | null) => (value === null ? null : wording.show(rung.limit, value));
	const at =
		rung.bound === 'above'
			? `not reached by ${show(rung.value)}`
			: rung.bound === 'below'
				? 'passed already at nothing'
				: `${show(rung.value)}`;
	const band =
		rung.low !== null && rung.high !== null && rung.bound === null ? `, ${show(rung.low)} to ${show(rung.high)}` : '';
	const share =
		rung.of_target !== null && rung.of_target < 1 && rung.bound === null
			? `, ${Math.round(rung.of_target * 100)} % of the target`
			: '';
	const power = rung.power === null || rung.bound !== null ? '' : `, about ${wording.show('engine.power', rung.power)}`;
	return [strong(`${rung.title}: `), `${at}${band}${share}${power}. ${rung.raise}`];
}
