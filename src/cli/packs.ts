import type { Rulebook } from '../rulebook/rulebook.ts';
import { BadUsage } from './exit.ts';

/** The built rulebook with rule packs added. */
export function withPacks(_rulebook: Rulebook, packs: readonly string[]): Rulebook {
	throw new BadUsage(`--rules: ${packs.join(', ')}`);
}
