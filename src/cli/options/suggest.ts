import { nearest } from '../../text/likeness.ts';
import { BadUsage } from '../process/exit.ts';

/** An id that is not known, with those most like it and the command that lists all. */
export function unknownId(what: string, id: string, all: readonly { readonly id: string }[], list: string): BadUsage {
	const near = nearest(
		id,
		all.map(each => each.id),
	);
	return new BadUsage(
		`found ${JSON.stringify(id)}; accepted: the id of a ${what}, like ${near.join(', ')}. All of them: ${list}`,
	);
}
