import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Declared } from '../../src/log/declared.ts';
import { readEpisodes } from '../../src/rulebook/compile/episodes.ts';
import { Fields } from '../../src/rulebook/compile/fields.ts';
import { Source } from '../../src/rulebook/compile/source.ts';
import { rulesFolder } from './model.ts';

let read: Declared | undefined;

/** What the project's own rules/episodes.yaml declares. */
export function declared(): Declared {
	if (read) return read;
	const problems: { path: string; line: number; message: string }[] = [];
	const source = new Source(
		{ path: 'episodes.yaml', text: readFileSync(join(rulesFolder, 'episodes.yaml'), 'utf8') },
		problems as never,
	);
	read = readEpisodes(new Fields(source, source.root!));
	if (problems.length > 0) throw new Error(problems.map(({ line, message }) => `${line} ${message}`).join('\n'));
	return read;
}
