import type { Assessment } from '../../audit/assess.ts';
import { type Block, heading } from '../document.ts';

/** Parts to get, merged over the findings that fail. */
export function parts({ audit }: Assessment): Block[] {
	const wanted = new Map<string, string[]>();
	for (const { verdict, parts: things, title } of audit.findings) {
		if (verdict !== 'fails') continue;
		for (const thing of things) wanted.set(thing, [...new Set([...(wanted.get(thing) ?? []), title])]);
	}
	const items = [...wanted].map(([thing, titles]) => [`${thing}: ${titles.join('; ')}.`]);
	return items.length > 0 ? [heading(2, 'Parts to get'), { is: 'items', items }] : [];
}
