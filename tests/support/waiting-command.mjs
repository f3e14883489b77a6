// The built program in a process that waits for command lines and runs one after the other: loading it and warming it up
// for each of some hundred runs costs more than they do. What a start does is left to the tests of the start.
import { closeSync, createReadStream, openSync, readFileSync, writeSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Script } from 'node:vm';

const [, , command, stdin, mark] = process.argv;
const folder = dirname(command);
const filename = join(folder, 'program.js');
const program = new Script(readFileSync(filename, 'latin1'), { filename }).runInThisContext();
/** @type {(args: string[]) => Promise<number>} */
let main;
program(
	createRequire(command),
	folder,
	name => import(name),
	given => (main = given),
);
const own = new Map(process.eventNames().map(name => [name, process.listeners(name)]));

process.on('message', async ({ args, env }) => {
	for (const name of Object.keys(process.env)) delete process.env[name];
	Object.assign(process.env, env);
	// The lowest number that is free is given to the file opened next: standard input.
	closeSync(0);
	openSync(stdin);
	let reader;
	Object.defineProperty(process, 'stdin', {
		configurable: true,
		get: () => (reader ??= createReadStream('', { fd: 0, autoClose: false })),
	});
	process.argv = [process.execPath, command, ...args];
	process.exitCode = undefined;
	const status = await main(args);
	reader?.destroy();
	for (const name of process.eventNames()) {
		for (const listener of process.listeners(name)) {
			if (name !== 'message' && !own.get(name)?.includes(listener)) process.off(name, listener);
		}
	}
	for (const stream of [1, 2]) await write(stream, mark);
	process.send(status);
});

/** A pipe whose reader is slow is full for a while. */
async function write(stream, text) {
	for (let rest = Buffer.from(text); rest.length > 0; ) {
		try {
			rest = rest.subarray(writeSync(stream, rest));
		} catch (error) {
			if (error.code !== 'EAGAIN') throw error;
			await new Promise(setImmediate);
		}
	}
}
