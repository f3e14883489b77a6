// Builds dist/: the command, the rulebook as JSON, what shells and `man` read.
import { spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { billOfMaterials, bundledPackages, licenses } from './components.mjs';
import { foundFiles, handedIn, withoutDevtools, withoutWork } from './plugins.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const own = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
const common = {
	absWorkingDir: root,
	bundle: true,
	platform: 'node',
	format: 'esm',
	target: 'node20',
	// Modules first: one library's other form cannot be bundled.
	mainFields: ['module', 'main'],
	define: { __VERSION__: JSON.stringify(own.version) },
	logLevel: 'warning',
	// Less to read at each start.
	minify: true,
	// They are in LICENSES.txt, each once.
	legalComments: 'none',
	plugins: [foundFiles],
};

/** Runs a program of src/build that is written in TypeScript; gives what it printed. */
async function runAtBuild(name, ...args) {
	const outfile = `dist/.${name}.mjs`;
	await build({ ...common, entryPoints: [`src/build/${name}.ts`], outfile, packages: 'external' });
	const { status, stdout } = spawnSync(process.execPath, [outfile, ...args], {
		cwd: root,
		stdio: ['ignore', 'pipe', 'inherit'],
		maxBuffer: 1e8,
	});
	rmSync(root + outfile);
	if (status !== 0) process.exit(1);
	return stdout;
}

rmSync(`${root}dist`, { recursive: true, force: true });
mkdirSync(`${root}dist`);
await runAtBuild('compile-rules', 'rules', 'dist');
const program = {
	...common,
	entryPoints: ['src/cli/main.ts'],
	define: {
		...common.define,
		'import.meta.dirname': '__dirname',
		// The drawing library's layout engine asks where it lies, and carries all that it would fetch from there.
		'import.meta.url': '""',
		'process.env.NODE_ENV': '"production"',
		'process.env.DEV': '"false"',
	},
	// Strict as modules are, once for all of them.
	banner: { js: '(function (require, __dirname, importing, entry) {"use strict";' },
	tsconfigRaw: { compilerOptions: { alwaysStrict: false } },
	footer: { js: '})' },
	plugins: [...common.plugins, withoutDevtools, handedIn],
	jsx: 'automatic',
};
const { metafile } = await build({
	...program,
	outfile: 'dist/program.js',
	metafile: true,
	// Read when somebody asks for the stack of a bug; the sources themselves are not in it.
	sourcemap: 'external',
	sourcesContent: false,
});
// Without the rest to read, help and the version take a tenth less on Node 20 and a quarter less on 24.
await build({ ...program, outfile: 'dist/help.js', plugins: [withoutWork, ...program.plugins] });
// A script starts sooner than a module, by the time that it takes to load the module loader.
await build({ ...common, entryPoints: ['src/cli/start.ts'], outfile: 'dist/swap-audit.js', format: 'cjs' });
// What reads a large log beside the program; as it stands, so that the stack of a bug in it says something.
await build({
	...common,
	entryPoints: ['src/cli/log-reader/worker.ts'],
	outfile: 'dist/log-reader.js',
	format: 'cjs',
	minify: false,
});
writeFileSync(`${root}dist/package.json`, '{ "type": "commonjs" }\n');
const bundled = bundledPackages(root, Object.keys(metafile.inputs));
writeFileSync(`${root}dist/LICENSES.txt`, licenses(root, bundled));
writeFileSync(
	`${root}dist/bill-of-materials.cdx.json`,
	`${JSON.stringify(billOfMaterials(own, bundled), null, '\t')}\n`,
);
writeFileSync(`${root}dist/swap-audit.1`, await runAtBuild('man-page'));
for (const shell of ['bash', 'zsh', 'fish']) {
	copyFileSync(`${root}src/cli/shells/completion.${shell}`, `${root}dist/completion.${shell}`);
}
copyFileSync(`${root}rules/topic.schema.json`, `${root}dist/topic.schema.json`);
copyFileSync(`${root}demo/half-finished.sheet.json`, `${root}dist/demo.json`);
const bin = `${root}dist/swap-audit.js`;
writeFileSync(bin, `#!/usr/bin/env node\n${readFileSync(bin, 'utf8')}`);
chmodSync(bin, 0o755);
