import type { Assessment } from '../../audit/assess.ts';
import { type Block, heading, listed } from '../document.ts';

/** A line less sure than this is measured first: no part is proposed for it. */
const sureEnough = 0.9;

/** Parts to get, merged over the findings that surely fail: `a relay` and `relay` are one part. */
export function parts({ audit }: Assessment): Block[] {
	const wanted = new Map<string, { thing: string; titles: Set<string> }>();
	for (const { verdict, sure, parts: things, title } of audit.findings) {
		if (verdict !== 'fails' || (sure !== null && sure < sureEnough)) continue;
		for (const thing of things) {
			const bare = thing.replace(/^(a|an|the) /, '');
			const found = wanted.get(bare) ?? { thing, titles: new Set() };
			wanted.set(bare, { ...found, titles: found.titles.add(title) });
		}
	}
	return listed(
		[heading(2, 'Parts to get')],
		[...wanted.values()].map(({ thing, titles }) => [`${thing}: ${[...titles].join('; ')}.`]),
	);
}
