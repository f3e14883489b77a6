import { type FileSystem, fileSystem } from '../../src/files/file-system.ts';

/** The operations on the disk, as the tests count them. */
const operations = [
	'open',
	'read',
	'write',
	'chmod',
	'chown',
	'flush',
	'close',
	'flushFolder',
	'rename',
	'unlink',
	'makeFolder',
	'look',
	'readLink',
	'list',
] as const satisfies (keyof FileSystem)[];

export type Operation = (typeof operations)[number];

/** A machine that calls `before` before each operation on the disk, with its number from 1, its name and its arguments. */
export function watched(
	before: (n: number, operation: Operation, args: unknown[]) => void,
	on = fileSystem,
): FileSystem {
	let n = 0;
	const wrapped = operations.map(operation => {
		const call = (...args: unknown[]) => {
			before(++n, operation, args);
			return (on[operation] as (...args: unknown[]) => unknown)(...args);
		};
		return [operation, call];
	});
	return { ...on, ...Object.fromEntries(wrapped) };
}

/** The error the system throws with this code. */
export function systemError(code: string): Error {
	return Object.assign(new Error(code), { code });
}

/** How many operations on the disk the work takes. */
export function operationsOf(work: (on: FileSystem) => void): number {
	let count = 0;
	work(
		watched(n => {
			count = n;
		}),
	);
	return count;
}
