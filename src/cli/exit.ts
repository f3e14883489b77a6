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
