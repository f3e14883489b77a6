import type { Assessment } from '../../audit/assess.ts';
import { type Block, heading, listed } from '../document.ts';

/** Parts to get, merged over the findings that fail. */
export function parts({ audit }: Assessment): Block[] {
	const wanted = new Map<string, Set<string>>();
	for (const { verdict, parts: things, title } of audit.findings) {
		if (verdict !== 'fails') continue;
		for (const thing of things) wanted.set(thing, (wanted.get(thing) ?? new Set()).add(title));
	}
	return listed(
		[heading(2, 'Parts to get')],
		[...wanted].map(([thing, titles]) => [`${thing}: ${[...titles].join('; ')}.`]),
	);
}
