import { BadUsage } from '../process/exit.ts';

/** Suggestions at most. */
const most = 5;

/** An id that is not known, with those that begin like it, else those of its section, and the command that lists all. */
export function unknownId(what: string, id: string, all: readonly { readonly id: string }[], list: string): BadUsage {
	const startingWith = (begun: string) => all.filter(each => each.id.startsWith(begun)).map(each => each.id);
	const near = [startingWith(id), startingWith(`${id.split('.')[0]}.`)].find(found => found.length > 0) ?? [];
	const like = near.length > 0 ? `, like ${near.slice(0, most).join(', ')}` : '';
	return new BadUsage(`found ${JSON.stringify(id)}; accepted: the id of a ${what}${like}. All of them: ${list}`);
}
