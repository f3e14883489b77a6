import type { FittedStep } from '../../audit/procedures.ts';
import type { Rulebook } from '../../rulebook/rulebook.ts';
import { type Block, heading, type Inline, paragraph, strong } from '../document.ts';
import type { ReportContext } from './context.ts';
import { cautionWords, upper } from './names.ts';

/** The day itself: each procedure fitted to the answers; one whose stage is not ready says so first. */
export function procedures({ model, procedures: fitted }: ReportContext): Block[] {
	const blocks = fitted.flatMap(({ title, ready, steps }): Block[] => [
		heading(3, upper(title)),
		...(ready
			? []
			: [paragraph(strong('Not ready: '), 'the list above has open lines for this point. Settle them first.')]),
		{ is: 'steps', items: steps.map(step => words(step, model.rulebook)) },
	]);
	return blocks.length > 0 ? [heading(2, 'The day itself'), ...blocks] : [];
}

function words(step: FittedStep, rulebook: Rulebook): Inline[] {
	const cautions = cautionWords(rulebook, step.cautions);
	return [
		step.do,
		...(step.read ? [' ', strong('Read: '), step.read] : []),
		...(step.stop ? [' ', strong('Stop if: '), step.stop] : []),
		...(cautions.length > 0 ? [' ', ...cautions] : []),
	];
}
