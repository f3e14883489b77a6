import type { Rulebook } from '../rulebook/rulebook.ts';
import type { Finding, PackUse } from './audit.ts';

/** Each pack with the answers that it stands in for in this audit, and the rules that it changed. */
export function packsUsed({ packs, changed }: Rulebook, findings: readonly Finding[]): PackUse[] {
	if (packs.length === 0) return [];
	const assumed = new Set(findings.flatMap(finding => finding.assumed));
	return [...new Set(packs)].map(pack => {
		const ending = ` (${pack})`;
		return {
			pack,
			prefills: [...assumed]
				.filter(name => name.endsWith(ending))
				.map(name => name.slice(0, -ending.length))
				.sort(),
			changes: changed.filter(change => change.pack === pack).map(({ rule, fields }) => ({ rule, fields })),
		};
	});
}
