import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** Makes one plain script of a TypeScript file, so that a test can run it as a process of its own; gives its path. */
export async function bundle(entry: URL, folder: string): Promise<string> {
	const outfile = join(folder, 'child.mjs');
	await build({
		entryPoints: [fileURLToPath(entry)],
		outfile,
		bundle: true,
		platform: 'node',
		format: 'esm',
		logLevel: 'error',
	});
	return outfile;
}
