import type { Assessment } from '../../audit/assess.ts';
import { conditionIn } from '../../audit/conditions.ts';
import { type Block, heading, strong } from '../document.ts';

/** Shown whatever the build: local rules, and the people who hold a licence. */
const always = ['law', 'licensed-help'];

/** Read this first: the cautions of what is open, those of the build, local law and licensed help. */
export function cautions({ audit, state, model }: Assessment): Block[] {
	const open = new Set(
		audit.findings
			.filter(({ verdict }) => verdict !== 'does-not-apply' && verdict !== 'holds')
			.flatMap(finding => finding.cautions),
	);
	const shown = model.rulebook.cautions.filter(
		({ id, when }) => always.includes(id) || (open.has(id) && conditionIn(state, when) !== false),
	);
	return [
		heading(2, 'Read this first'),
		{ is: 'items', items: shown.map(({ title, words }) => [strong(`${title}. `), words]) },
	];
}
