import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The built command, as `node FILE` runs it. */
export const command = fileURLToPath(new URL('../../dist/swap-audit.js', import.meta.url));

/** Compiled code of the program, for all tests: what a command leaves elsewhere is looked at. */
const sharedCache = join(tmpdir(), 'swap-audit-tests-cache');

export interface Ran {
	readonly status: number | null;
	readonly out: string;
	readonly err: string;
}

/** Runs the built command to its end. Its data and preferences go into `home`, never into the person's own. */
export function runCommand(
	args: readonly string[],
	options: { input?: string; home?: string; env?: Record<string, string> } = {},
): Ran {
	const home = options.home ?? '/nonexistent';
	const done = spawnSync(process.execPath, [command, ...args], {
		input: options.input ?? '',
		encoding: 'utf8',
		maxBuffer: 1e8,
		env: {
			PATH: process.env.PATH ?? '',
			XDG_CACHE_HOME: sharedCache,
			HOME: home,
			XDG_DATA_HOME: home,
			XDG_CONFIG_HOME: home,
			...options.env,
		},
	});
	return { status: done.status, out: done.stdout, err: done.stderr };
}
