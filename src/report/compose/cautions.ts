import { conditionIn } from '../../audit/conditions.ts';
import { type Block, heading, listed, strong } from '../document.ts';
import type { ReportContext } from './context.ts';

/** Shown whatever the build: local rules, and the people who hold a licence. */
const always = ['law', 'licensed-help'];

/** Read this first: every caution that a line of this audit names, those of the build, local law and licensed help. */
export function cautions({ audit, state, model, wording, open, procedures }: ReportContext): Block[] {
	const named = new Set([
		...always,
		...audit.findings.filter(({ verdict }) => verdict === 'fails').flatMap(finding => finding.cautions),
		...open.flatMap(({ question }) => question.cautions),
		...procedures.flatMap(({ steps }) => steps.flatMap(step => step.cautions)),
	]);
	const shown = model.rulebook.cautions.filter(
		({ id, when }) => named.has(id) || (when !== null && conditionIn(state, when) === true),
	);
	return listed(
		[heading(2, 'Read this first')],
		shown.map(({ title, words }) => [strong(`${title}. `), wording.say(words)]),
		'small',
	);
}
