import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Sheet } from '../../src/sheet/sheet.ts';

const folder = fileURLToPath(new URL('../../demo/', import.meta.url));

/** The sheets of demo/, each with its name. */
export const demoSheets = (): [string, Sheet][] =>
	readdirSync(folder)
		.filter(name => name.endsWith('.sheet.json'))
		.map(name => [name, JSON.parse(readFileSync(folder + name, 'utf8'))]);
