import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { PassThrough } from 'node:stream';
import { keptFile, programIn, writeKept } from '../cli/kept.ts';

// Runs the built command once, on a copy of the demo build, and keeps beside it what the engine compiled on the way.
const [folder = '', ...args] = process.argv.slice(2);
const home = mkdtempSync(join(tmpdir(), 'swap-audit-kept-'));
copyFileSync(join(folder, 'demo.json'), join(home, 'demo.json'));
process.chdir(home);
Object.assign(process.env, { HOME: home, XDG_DATA_HOME: home, XDG_CONFIG_HOME: home, TERM: 'xterm' });

/** Something that looks like a terminal, with nobody at it. */
const terminal = () => {
	const stream = Object.assign(new PassThrough(), { isTTY: true, columns: 80, rows: 24, ref() {}, unref() {} });
	return Object.assign(stream, { setRawMode: () => stream });
};
const keys = terminal();
Object.defineProperty(process, 'stdin', { value: keys });
for (const name of ['stdout', 'stderr']) Object.defineProperty(process, name, { value: terminal().resume() });

const { script, begin } = programIn(folder);
process.on('exit', () => {
	const file = keptFile(folder, args);
	mkdirSync(dirname(file), { recursive: true });
	writeKept(file, script.createCachedData());
	process.chdir(folder);
	rmSync(home, { recursive: true });
});
process.argv = [process.execPath, join(folder, 'swap-audit.js'), ...args];
begin(createRequire(join(folder, 'program.js')), folder, name => import(name));
if (args[0] === 'interview') {
	// By then the first question is drawn; a key, and the way out, are kept too.
	setTimeout(() => keys.write('\r'), 500);
	setTimeout(() => keys.write('\u0003'), 700);
	setTimeout(() => process.exit(0), 900);
}
