import { execFileSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const sources = ['src', 'rules', 'demo/half-finished.sheet.json', 'package.json', 'CHANGELOG.md', 'LICENSE'];

/** Builds the command before all tests where anything it is made of is newer, so that those that run it never meet an old one. */
export default function build(): void {
	const newest = Math.max(...sources.map(path => lastChange(join(root, path))));
	if (lastBuild() > newest) return;
	execFileSync(process.execPath, ['src/build/build.mjs'], { cwd: root, stdio: 'inherit' });
}

/** ms since 1970 of the last file that a build writes; 0 where nothing is built. */
function lastBuild(): number {
	return statSync(join(root, 'dist/swap-audit.js'), { throwIfNoEntry: false })?.mtimeMs ?? 0;
}

/** ms since 1970 of the latest change at or below a path; a file taken away changes its folder. */
function lastChange(path: string): number {
	const { mtimeMs, isDirectory } = statOf(path);
	return isDirectory ? Math.max(mtimeMs, ...readdirSync(path).map(name => lastChange(join(path, name)))) : mtimeMs;
}

function statOf(path: string): { mtimeMs: number; isDirectory: boolean } {
	const found = statSync(path);
	return { mtimeMs: found.mtimeMs, isDirectory: found.isDirectory() };
}
