// Builds dist/: the command as ES modules split by what each command needs, the rulebook as JSON, what shells and `man` read.
import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { licences } from './licences.mjs';

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
	// Less to read at each start.
	minify: true,
};

/** The drawing library loads its own debugger when asked to; nobody asks here. */
const withoutDevtools = {
	name: 'without-devtools',
	setup({ onResolve, onLoad }) {
		onResolve({ filter: /\/devtools\.js$/ }, ({ path }) => ({ path, namespace: 'nothing' }));
		onLoad({ filter: /.*/, namespace: 'nothing' }, () => ({ contents: 'export default {}' }));
	},
};

/** Runs a program of src/build that is written in TypeScript; gives what it printed. */
async function runAtBuild(name, ...args) {
	const outfile = `dist/.${name}.mjs`;
	await build({ ...common, entryPoints: [`src/build/${name}.ts`], outfile, packages: 'external' });
	try {
		return execFileSync(process.execPath, [outfile, ...args], { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
	} catch {
		process.exit(1);
	} finally {
		rmSync(root + outfile);
	}
}

rmSync(`${root}dist`, { recursive: true, force: true });
mkdirSync(`${root}dist`);
await runAtBuild('compile-rules', 'rules', 'dist');
const { metafile } = await build({
	...common,
	entryPoints: { 'swap-audit': 'src/cli/main.ts' },
	outdir: 'dist',
	splitting: true,
	metafile: true,
	// Bundled, for fewer files to open; preferences are read after the first frame and stay outside.
	external: ['conf'],
	define: { ...common.define, 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
	plugins: [withoutDevtools],
	banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
	jsx: 'automatic',
});
writeFileSync(`${root}dist/LICENSES.txt`, licences(root, Object.keys(metafile.inputs)));
writeFileSync(`${root}dist/swap-audit.1`, await runAtBuild('man-page'));
for (const shell of ['bash', 'zsh', 'fish']) {
	copyFileSync(`${root}src/cli/shells/completion.${shell}`, `${root}dist/completion.${shell}`);
}
copyFileSync(`${root}rules/topic.schema.json`, `${root}dist/topic.schema.json`);
copyFileSync(`${root}demo/half-finished.sheet.json`, `${root}dist/demo.json`);
const bin = `${root}dist/swap-audit.js`;
writeFileSync(bin, `#!/usr/bin/env node\n${readFileSync(bin, 'utf8')}`);
chmodSync(bin, 0o755);
