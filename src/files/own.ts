import { readFileSync } from 'node:fs';

/** The text of a file of the program itself, as the build laid it: no error for people is made of one that is missing. */
export const readOwn = (path: string, encoding: 'utf8' | 'latin1' = 'utf8'): string => readFileSync(path, encoding);
