import type { Assessment } from '../../audit/assess.ts';
import { fittedProcedures } from '../../audit/procedures.ts';
import { type Block, heading, type Inline, paragraph, strong } from '../document.ts';

/** The day itself: each procedure fitted to the answers; one whose stage is not ready says so first. */
export function procedures(assessment: Assessment): Block[] {
	const { rulebook } = assessment.model;
	const blocks = fittedProcedures(assessment).flatMap(({ title, ready, steps }): Block[] => [
		heading(3, title.charAt(0).toUpperCase() + title.slice(1)),
		...(ready
			? []
			: [paragraph(strong('Not ready: '), 'the list above has open lines for this point. Settle them first.')]),
		{
			is: 'steps',
			items: steps.map((step): Inline[] => {
				const cautions = rulebook.cautions
					.filter(({ id }) => step.cautions.includes(id))
					.map(({ title: words }) => words);
				return [
					step.do,
					...(step.read ? [' ', strong('Read: '), step.read] : []),
					...(step.stop ? [' ', strong('Stop if: '), step.stop] : []),
					...(cautions.length > 0 ? [' ', strong('Caution: '), `${cautions.join('; ')}.`] : []),
				];
			}),
		},
	]);
	return blocks.length > 0 ? [heading(2, 'The day itself'), ...blocks] : [];
}
