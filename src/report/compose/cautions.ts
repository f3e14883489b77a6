import { conditionIn } from '../../audit/conditions.ts';
import { type Block, heading, listed, strong } from '../document.ts';
import type { ReportContext } from './context.ts';

/** Shown whatever the build: local rules, and the people who hold a license. */
const always = ['law', 'licensed-help'];

/** Every caution that a line or a step of this audit or its details names, those of the build, local law and licensed help, in full. */
export function cautions({ audit, state, model, wording, open, procedures }: ReportContext): Block[] {
	const named = new Set([
		...always,
		...audit.findings
			.filter(({ verdict }) => verdict === 'fails' || verdict === 'not-evaluated')
			.flatMap(finding => finding.cautions),
		...open.flatMap(({ question }) => question.cautions),
		...procedures.flatMap(({ steps }) => steps.flatMap(step => step.cautions)),
	]);
	const shown = model.rulebook.cautions.filter(
		({ id, when }) => named.has(id) || (when !== null && conditionIn(state, when) === true),
	);
	return listed(
		[heading(2, 'All cautions in full')],
		shown.map(({ title, words }) => [strong(`${title}. `), wording.say(words)]),
		'small',
	);
}

/** Some cautions in full, behind a page that names them on its lines. */
export function cautionsInFull(
	ids: Iterable<string>,
	{ model, wording }: Pick<ReportContext, 'model' | 'wording'>,
): Block[] {
	const named = new Set([...always, ...ids]);
	return listed(
		[heading(2, 'Cautions')],
		model.rulebook.cautions
			.filter(({ id }) => named.has(id))
			.map(({ title, words }) => [strong(`${title}. `), wording.say(words)]),
		'small',
	);
}
