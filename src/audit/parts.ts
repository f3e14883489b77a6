import type { Rulebook } from '../rulebook/rulebook.ts';
import type { Finding } from './audit.ts';

/** A part to get, and what for. */
export interface PartToGet {
	readonly id: string;
	/** With how many, where each line needs its own: `3 relays with sockets`. */
	readonly words: string;
	/** Titles of the lines that ask for it. */
	readonly purposes: readonly string[];
}

/**
 * The parts of some findings, each once: what serves every line is bought once, what each line needs for itself is counted, and
 * what another part covers is left out. In the order of the findings.
 */
export function partsFor(
	findings: readonly Finding[],
	{ rules, parts }: Pick<Rulebook, 'rules' | 'parts'>,
): PartToGet[] {
	const known = new Map(parts.map(part => [part.id, part]));
	const wanted = new Map<string, { count: number; purposes: Set<string> }>();
	for (const { rule, title } of findings) {
		for (const id of rules.find(other => other.id === rule)?.parts ?? []) {
			const found = wanted.get(id) ?? { count: 0, purposes: new Set() };
			wanted.set(id, { count: found.count + 1, purposes: found.purposes.add(title) });
		}
	}
	for (const id of [...wanted.keys()]) {
		for (const covered of known.get(id)?.covers ?? []) {
			const less = wanted.get(covered);
			for (const purpose of less?.purposes ?? []) wanted.get(id)!.purposes.add(purpose);
			wanted.delete(covered);
		}
	}
	return [...wanted].map(([id, { count, purposes }]) => {
		const part = known.get(id);
		const words = part?.plural && count > 1 ? `${count} ${part.plural}` : (part?.title ?? id);
		return { id, words, purposes: [...purposes] };
	});
}
