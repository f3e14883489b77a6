import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';

/** The built command, as `node FILE` runs it. */
export const command = fileURLToPath(new URL('../../dist/swap-audit.js', import.meta.url));

/** Compiled code of the program, for all tests: what a command leaves elsewhere is looked at. */
export const sharedCache = join(tmpdir(), 'swap-audit-tests-cache');

export interface Ran {
	readonly status: number | null;
	readonly out: string;
	readonly err: string;
}

interface Options {
	readonly input?: string;
	readonly home?: string;
	readonly env?: Readonly<Record<string, string>>;
}

/** Data and preferences of the command go into `home`, never into the person's own. */
const environment = ({ home = '/nonexistent', env }: Options) => ({
	PATH: process.env.PATH ?? '',
	XDG_CACHE_HOME: sharedCache,
	HOME: home,
	XDG_DATA_HOME: home,
	XDG_CONFIG_HOME: home,
	...env,
});

/** Runs the built command to its end in a process of its own. */
export function startCommand(args: readonly string[], options: Options = {}): Ran {
	const done = spawnSync(process.execPath, [command, ...args], {
		input: options.input ?? '',
		encoding: 'utf8',
		maxBuffer: 1e8,
		env: environment(options),
	});
	return { status: done.status, out: done.stdout, err: done.stderr };
}

let waiting: ReturnType<typeof wait> | undefined;

/** Runs the built command to its end, in a process that has run others before: ten times as fast. */
export function runCommand(args: readonly string[], options: Options = {}): Ran {
	waiting ??= wait();
	return waiting(args, options);
}

function wait() {
	const flag = new Int32Array(new SharedArrayBuffer(4));
	const folder = mkdtempSync(join(tmpdir(), 'swap-audit-tests-'));
	process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
	const stdin = join(folder, 'stdin');
	const { port1: port, port2 } = new MessageChannel();
	new Worker(new URL('command-thread.mjs', import.meta.url), {
		workerData: {
			waiting: fileURLToPath(new URL('waiting-command.mjs', import.meta.url)),
			command,
			stdin,
			// No command prints a control character.
			mark: '\u0004end of the command\u0004',
			flag,
			port: port2,
		},
		transferList: [port2],
	}).unref();
	port.unref();
	return (args: readonly string[], options: Options): Ran => {
		writeFileSync(stdin, options.input ?? '');
		Atomics.store(flag, 0, 0);
		port.postMessage({ args, env: environment(options) });
		if (Atomics.wait(flag, 0, 0, 120_000) === 'timed-out') throw new Error(`no end in two minutes: ${args.join(' ')}`);
		return receiveMessageOnPort(port)!.message;
	};
}
