import { join } from 'node:path';
import { Script } from 'node:vm';
import { codeCacheFile, readCode, writeCode } from '../files/code-cache.ts';
import { readOwn } from '../files/own.ts';

// The file that the command runs: the program as one script, with the compiled code of an earlier run where it fits.
const filename = join(__dirname, 'program.js');
const [first = 'interview'] = process.argv.slice(2);
const start = first.startsWith('-') ? 'help' : first === 'interview' || first === 'log' ? first : 'audit';
const file = codeCacheFile(filename, start);
const cachedData = file === null ? undefined : readCode(file);
// Nothing in the program is beyond ASCII: the build sees to that.
const script = new Script(readOwn(filename, 'latin1'), { filename, ...(cachedData && { cachedData }) });
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
