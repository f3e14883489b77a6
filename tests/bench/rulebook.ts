import { readFileSync } from 'node:fs';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';

/** The rulebook that the last build made. */
export const builtRulebook = (): Rulebook => ({ ...built('rulebook'), vocabulary: built('vocabulary') });

const built = (name: string) => JSON.parse(readFileSync(`${process.cwd()}/dist/${name}.json`, 'utf8'));
