import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The built command, as `node FILE` runs it. */
export const command = fileURLToPath(new URL('../../dist/swap-audit.js', import.meta.url));

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
		// Compiled code is not cached: tests look at every file that a command leaves.
		env: {
			PATH: process.env.PATH ?? '',
			NODE_DISABLE_COMPILE_CACHE: '1',
			HOME: home,
			XDG_DATA_HOME: home,
			XDG_CONFIG_HOME: home,
			...options.env,
		},
	});
	return { status: done.status, out: done.stdout, err: done.stderr };
}
