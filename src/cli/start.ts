import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { codeCacheFile, readCode, writeCode } from './code-cache.ts';

// The file that the command runs: the program as one script, with the compiled code of an earlier run where it fits.
const filename = join(__dirname, 'program.js');
const file = codeCacheFile(filename, process.argv.slice(2));
const cachedData = file === null ? undefined : readCode(file);
// Nothing in the program is beyond ASCII: the build sees to that.
const script = new Script(readFileSync(filename, 'latin1'), { filename, ...(cachedData && { cachedData }) });
if (file !== null && (!cachedData || script.cachedDataRejected)) process.on('exit', () => writeCode(file, script));
// A script has neither `require` nor `import()` of its own.
script.runInThisContext()(
	require,
	__dirname,
	(name: string) => import(name),
	async (main: (args: readonly string[]) => Promise<number>) => {
		process.exitCode = await main(process.argv.slice(2));
		process.exit();
	},
);
