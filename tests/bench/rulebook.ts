import { readFileSync } from 'node:fs';
import type { Rulebook } from '../../src/rulebook/rulebook.ts';

/** The rulebook that the last build made. */
export const builtRulebook = (): Rulebook => JSON.parse(readFileSync(`${process.cwd()}/dist/rulebook.json`, 'utf8'));
