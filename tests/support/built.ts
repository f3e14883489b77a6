import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Builds the command once before all tests, so that those that run it never meet an old one. */
export default function build(): void {
	execFileSync(process.execPath, ['src/build/build.mjs'], { cwd: root, stdio: 'inherit' });
}
