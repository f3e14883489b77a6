// Builds dist/: the command as ES modules split by what each command needs, and the rulebook as one JSON file.
import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../../', import.meta.url));
const { version } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
const common = {
	absWorkingDir: root,
	bundle: true,
	platform: 'node',
	format: 'esm',
	target: 'node20',
	define: { __VERSION__: JSON.stringify(version) },
	logLevel: 'warning',
};
rmSync(`${root}dist`, { recursive: true, force: true });
mkdirSync(`${root}dist`);
await build({
	...common,
	entryPoints: ['src/build/compile-rules.ts'],
	outfile: 'dist/.compile-rules.mjs',
	packages: 'external',
});
try {
	execFileSync(process.execPath, ['dist/.compile-rules.mjs', 'rules', 'dist'], { cwd: root, stdio: 'inherit' });
} catch {
	process.exit(1);
} finally {
	rmSync(`${root}dist/.compile-rules.mjs`);
}
await build({
	...common,
	entryPoints: { 'swap-audit': 'src/cli/main.ts' },
	outdir: 'dist',
	splitting: true,
	// What every command needs is bundled, for fewer files to open; the drawing library stays outside.
	external: ['ink', 'ink-select-input', 'react', 'react/jsx-runtime', 'conf'],
	banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
	jsx: 'automatic',
});
copyFileSync(`${root}demo/half-finished.sheet.json`, `${root}dist/demo.json`);
const bin = `${root}dist/swap-audit.js`;
writeFileSync(bin, `#!/usr/bin/env node\n${readFileSync(bin, 'utf8')}`);
chmodSync(bin, 0o755);
