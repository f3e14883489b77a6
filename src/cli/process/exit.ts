import { FileProblem } from '../../files/problem.ts';
import { BadSheet } from '../../sheet/problem.ts';
import { BadTable } from '../../table/problem.ts';

/** Exit status of the command, as other programs rely on it. */
export const exit = {
	done: 0,
	/** The gate is not passed, or a rule example failed. */
	notPassed: 1,
	/** Wrong usage, bad input, a file that cannot be read or written. */
	badInput: 2,
	bug: 70,
	hangUp: 129,
	interrupted: 130,
	terminated: 143,
} as const;

/** A wrong use of the command, or a sheet it cannot use: what was found, what is accepted, what to do. */
export class BadUsage extends Error {
	override readonly name = 'BadUsage';
}

/** Whether an error is for the person: bad input, a file that refuses, wrong usage. Any other one is a bug. */
export const isForPerson = (error: unknown): error is Error =>
	error instanceof BadSheet || error instanceof BadTable || error instanceof FileProblem || error instanceof BadUsage;
