// From the start of the program to the first question drawn, in a real pseudo-terminal, beside a bare drawn line.
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { build } from 'esbuild';
import { withoutDevtools } from '../../src/build/plugins.mjs';
import { builds, command, root, table, timeOf } from './measure.mjs';

const home = mkdtempSync(join(tmpdir(), 'swap-audit-first-'));
const hello = join(home, 'hello.mjs');
await build({
	absWorkingDir: root,
	entryPoints: ['tests/bench/hello.mjs'],
	outfile: hello,
	bundle: true,
	minify: true,
	platform: 'node',
	format: 'esm',
	define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
	plugins: [withoutDevtools],
	banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
	logLevel: 'warning',
});
const sheet = join(home, 'build.json');
copyFileSync(builds.boosted, sheet);
const env = { PATH: process.env.PATH, TERM: 'xterm-256color', HOME: home, XDG_DATA_HOME: home, XDG_CONFIG_HOME: home };

/** Milliseconds until a program has drawn `sign`. */
function drawn(args, sign) {
	return new Promise((resolve, reject) => {
		const start = performance.now();
		const pty = spawn(process.execPath, args, { cols: 80, rows: 24, cwd: home, env });
		let bytes = '';
		const late = setTimeout(() => reject(new Error(`never drew ${sign}: ${JSON.stringify(bytes)}`)), 20_000);
		pty.onData(data => {
			bytes += data;
			if (!bytes.includes(sign)) return;
			clearTimeout(late);
			resolve(performance.now() - start);
			bytes = '';
			pty.kill('SIGKILL');
		});
	});
}

const runs = 20;
const times = { 'bare drawn line': [], 'node -e 0': [], 'interview, first question': [] };
for (let run = 0; run < runs; run++) {
	times['bare drawn line'].push(await drawn([hello], 'First question'));
	times['node -e 0'].push(timeOf(['-e', '0']));
	times['interview, first question'].push(await drawn([command, 'interview', sheet, '--section', 'engine'], 'engine'));
}
table(`to the first frame, ${runs} runs`, times);
rmSync(home, { recursive: true, force: true });
