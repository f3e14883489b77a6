import { join } from 'node:path';
import { Script } from 'node:vm';
import { codeCacheFile, readCode, writeCode } from '../files/code-cache.ts';
import { readOwn } from '../files/own.ts';

// The file that the command runs: the program as one script, with the compiled code of an earlier run where it fits.
const program = join(__dirname, 'program.js');
const [first = 'interview', ...others] = process.argv.slice(2);
const start = startOf(first, others);
const filename = start === 'help' ? join(__dirname, 'help.js') : program;
// Node 20 has one optimizing compiler, which takes longer over what it inlines than an audit lasts: a tenth of its time goes to that.
if (start === 'audit' && process.versions.node.startsWith('20.')) {
	process.getBuiltinModule('node:v8').setFlagsFromString('--max-inlined-bytecode-size-cumulative=100');
}
const file = codeCacheFile(program, start);
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

/** What is used of the program: most commands judge a sheet once, some go on for long. */
function startOf(command: string, rest: readonly string[]): string {
	if (['-h', '--help', '-V', '--version'].includes(command)) return 'help';
	if (rest.includes('--lines')) return 'lines';
	return command === 'interview' || command === 'log' ? command : 'audit';
}
