import type { Assessment } from '../../audit/assess.ts';
import { type Block, code, type Inline, listed, paragraph, type Section } from '../document.ts';
import { count } from './names.ts';

/** What was not judged, and why: what waits for answers, what broke, what does not apply, what a pack changed. */
export const unjudged = (assessment: Assessment): Section => ({
	title: 'What was not judged, and why',
	compose: () => reasons(assessment),
});

function reasons({ audit, model }: Assessment): Block[] {
	const lines = (word: string) => audit.findings.filter(({ verdict }) => verdict === word);
	const waiting = new Map<string, Set<string>>();
	for (const { missing, title } of lines('cannot-tell')) {
		const needs = missing.join(', ');
		waiting.set(needs, (waiting.get(needs) ?? new Set()).add(title));
	}
	const open = [...waiting].map(([needs, titles]): Inline[] => [`${[...titles].join('; ')}: needs `, code(needs), '.']);
	const changed = model.rulebook.changed.map(({ rule, pack, fields }): Inline[] => [
		code(rule),
		` (${fields.join(', ')}) by the pack ${pack}.`,
	]);
	const idle = lines('does-not-apply').length;
	return [
		...(open.length > 0 ? listed([], open, 'small') : [paragraph('Every rule that applies could be judged.')]),
		...listed(
			[paragraph('Not worked out:')],
			lines('not-evaluated').map(({ title, why }) => [`${title}. ${why}`]),
		),
		...listed([paragraph('Changed by a rule pack:')], changed),
		paragraph(
			`${count(idle, 'line')} of ${audit.findings.length} ${idle === 1 ? 'does' : 'do'} not apply to this build.`,
		),
	];
}
