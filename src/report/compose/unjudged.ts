import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import { type Block, code, heading, type Inline, paragraph } from '../document.ts';
import { count } from './names.ts';

/** What was not judged, and why: what waits for answers, what broke, what does not apply, what a pack changed. */
export function unjudged({ audit, model }: Assessment): Block[] {
	const waiting = audit.findings.filter(({ verdict }) => verdict === 'cannot-tell');
	const broke = audit.findings.filter(({ verdict }) => verdict === 'not-evaluated');
	const idle = audit.findings.filter(({ verdict }) => verdict === 'does-not-apply');
	const bySet = new Map<string, Finding[]>();
	for (const finding of waiting) {
		const set = finding.missing.join(', ');
		bySet.set(set, [...(bySet.get(set) ?? []), finding]);
	}
	const items = [...bySet].map(([missing, findings]): Inline[] => [
		`${[...new Set(findings.map(({ title }) => title))].join('; ')}: needs `,
		code(missing),
		'.',
	]);
	const changed = model.rulebook.changed.map(({ rule, pack, fields }): Inline[] => [
		code(rule),
		` (${fields.join(', ')}) by the pack ${pack}.`,
	]);
	return [
		heading(2, 'What was not judged, and why'),
		...(items.length > 0 ? [{ is: 'items', items } as const] : [paragraph('Every rule that applies could be judged.')]),
		...(broke.length > 0
			? [
					paragraph('Not worked out:'),
					{ is: 'items', items: broke.map(({ title, why }) => [`${title}. ${why}`]) } as const,
				]
			: []),
		...(changed.length > 0 ? [paragraph('Changed by a rule pack:'), { is: 'items', items: changed } as const] : []),
		paragraph(`${count(idle.length, 'rule')} of ${count(audit.findings.length, 'line')} do not apply to this build.`),
	];
}
