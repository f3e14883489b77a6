import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { makeModel, type Model } from '../audit/model.ts';
import type { Rulebook } from '../rulebook/rulebook.ts';

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** The rulebook that the build compiled, beside the program. */
export function builtRulebook(): Rulebook {
	const path = fileURLToPath(new URL('rulebook.json', import.meta.url));
	return JSON.parse(readFileSync(path, 'utf8'));
}

/** The model of the built rules, with rule packs added when paths are given. */
export async function loadModel(packs: readonly string[]): Promise<Model> {
	const rulebook = builtRulebook();
	if (packs.length === 0) return makeModel(rulebook, sha256);
	const { withPacks } = await import('./packs.ts');
	return makeModel(withPacks(rulebook, packs), sha256);
}
