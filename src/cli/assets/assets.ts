import { join } from 'node:path';
import { readOwn } from '../../files/own.ts';
import type { Vocabulary } from '../../plugs/circuit.ts';
import type { Example, NamedBuild, Rulebook, Term } from '../../rulebook/rulebook.ts';

/** The text of a file that the build laid beside the program. */
export const readAsset = (name: string): string => readOwn(join(import.meta.dirname, name));

const built = <T>(name: string): T => JSON.parse(readAsset(name));

/**
 * The rulebook that the build compiled, beside the program; without its examples. What plugs are read by, a fifth of it, is read
 * when first asked for: most sheets have none.
 */
export function readRulebook(): { readonly rulebook: Rulebook; readonly fingerprint: string } {
	const { fingerprint, ...rest } = built<Omit<Rulebook, 'vocabulary'> & { readonly fingerprint: string }>(
		'rulebook.json',
	);
	let vocabulary: Vocabulary | undefined;
	const rulebook: Rulebook = {
		...rest,
		get vocabulary() {
			return (vocabulary ??= built<Vocabulary>('vocabulary.json'));
		},
	};
	return { rulebook, fingerprint };
}

/** The same with the glossary, the examples of its rules and the builds they start from. */
export function readRulebookWithExamples(): Rulebook {
	const { builds, examples } = built<{
		builds: Record<string, NamedBuild>;
		examples: Record<string, Example[]>;
	}>('examples.json');
	const { rulebook } = readRulebook();
	const words = built<Term[]>('words.json');
	return {
		...rulebook,
		words,
		builds,
		rules: rulebook.rules.map(rule => ({ ...rule, examples: examples[rule.id] ?? [] })),
	};
}
