import { FileProblem } from '../../files/problem.ts';
import type { Block, Recording, Totals } from '../../log/block.ts';
import { BadTable } from '../../table/problem.ts';

/** How far the reading is, with each message. */
export interface Progress {
	readonly totals: Totals;
	/** Bytes of the file. */
	readonly taken: number;
}

/** What the thread that reads a log tells the one that judges it, in this order: opened, blocks, end; or what is wrong. */
export type Message =
	| (Progress & { readonly is: 'opened'; readonly recording: Omit<Recording, 'blocks'>; readonly size: number | null })
	| (Progress & { readonly is: 'block'; readonly block: Block })
	| (Progress & { readonly is: 'end'; readonly sha256: string })
	| { readonly is: 'refused'; readonly problem: Problem };

/** An error for the person in parts: as an error it would lose its class on the way. */
type Problem =
	| Pick<BadTable, 'name' | 'found' | 'accepted' | 'place'>
	| Pick<FileProblem, 'name' | 'path' | 'found' | 'todo' | 'code'>;

/** Anything but a log that cannot be read is a bug, and is thrown on. */
export function problemOf(error: unknown): Problem {
	if (error instanceof BadTable) {
		const { name, found, accepted, place } = error;
		return { name, found, accepted, place };
	}
	if (!(error instanceof FileProblem)) throw error;
	const { name, path, found, todo, code } = error;
	return { name, path, found, todo, code };
}

export const errorOf = (problem: Problem): Error =>
	problem.name === 'BadTable'
		? new BadTable(problem.found, problem.accepted, problem.place)
		: new FileProblem(problem.path, problem.found, problem.todo, problem.code);

/** So many blocks may wait to be judged: the two threads keep each other at work, and memory is bounded. */
export const ahead = 4;
