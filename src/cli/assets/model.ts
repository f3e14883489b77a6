import { type Model, makeModel } from '../../audit/model.ts';
import { readRulebook } from './assets.ts';
import { sha256 } from './hash.ts';

/** The model of the built rules, with rule packs added when paths are given. */
export async function loadModel(packs: readonly string[] = []): Promise<Model> {
	if (packs.length === 0) {
		const { rulebook, fingerprint } = readRulebook();
		return makeModel(rulebook, sha256, fingerprint);
	}
	const { withProvenPacks } = await import('./packs.ts');
	return makeModel(withProvenPacks(packs), sha256);
}
