import { Fields } from './fields.ts';
import { type Problem, Source, type SourceText } from './source.ts';
import type { ReadYaml } from './yaml.ts';

/** The files beside the folders of topics; none may be missing. */
const tables = [
	'sections',
	'cautions',
	'sources',
	'limits',
	'readings',
	'intervals',
	'circuits',
	'meetings',
	'parts',
	'words',
	'trouble-codes',
	'episodes',
	'channels',
].map(name => `${name}.yaml`);

/** The files that could be read, by path. */
export function rootsOf(
	files: readonly SourceText[],
	problems: Problem[],
	read: (text: string) => ReadYaml,
): Map<string, Fields> {
	const roots = new Map<string, Fields>();
	for (const path of tables) {
		if (!files.some(file => file.path === path))
			new Source({ path, text: '{}' }, problems).report(0, 'this file is missing');
	}
	for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : 1))) {
		const source = new Source(file, problems, null, read);
		if (source.root) roots.set(file.path, new Fields(source, source.root));
	}
	return roots;
}
