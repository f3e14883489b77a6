import type { Command } from 'commander';
import type { Term } from '../../rulebook/rulebook.ts';
import { nearest } from '../../text/likeness.ts';
import { wrap } from '../../text/wrap.ts';
import { readAsset } from '../assets/assets.ts';
import { BadUsage, exit } from '../process/exit.ts';
import { print } from '../process/output.ts';

/** `swap-audit help [TOPIC] [NAME]`: the program's help, a command's, or the words of the trade, all or one. */
export function help(program: Command, topic?: string, name?: string): number {
	if (topic === 'words') print(words(name));
	else {
		const path = [topic, name].filter(each => each !== undefined);
		path.reduce(below, program).outputHelp();
	}
	return exit.done;
}

function below(command: Command, name: string): Command {
	const found = command.commands.find(each => each.name() === name);
	if (found) return found;
	const known = command.createHelp().visibleCommands(command);
	const names = [...known.map(each => each.name()), ...(command.parent ? [] : ['words'])];
	if (names.length === 0) throw new BadUsage(`help: ${command.name()} has no command ${JSON.stringify(name)}`);
	throw new BadUsage(`help: found ${JSON.stringify(name)}; accepted: ${names.join(', ')}`);
}

function words(wanted: string | undefined): string {
	const all: readonly Term[] = JSON.parse(readAsset('words.json'));
	if (wanted === undefined) return all.map(inWords).join('\n');
	const found = all.filter(term => answersTo(term, wanted.toLowerCase()));
	if (found.length > 0) return found.map(inWords).join('\n');
	const near = nearest(wanted, all.flatMap(spellings)).map(word => all.find(term => answersTo(term, word))!.term);
	throw new BadUsage(
		`help words: found ${JSON.stringify(wanted)}; accepted: a word of the list, like ${[...new Set(near)].join(', ')}. All of them: swap-audit help words`,
	);
}

/** A term answers to its name, to each word of it (MAF of "air meter (MAF)"), and to the words it is said instead of. */
const answersTo = (term: Term, wanted: string): boolean => spellings(term).includes(wanted);

const spellings = ({ term, not }: Term): string[] =>
	[term, ...term.split(/[\s()/,]+/), ...not].filter(Boolean).map(word => word.toLowerCase());

const inWords = ({ term, meaning, not }: Term): string =>
	[
		...wrap(`${term}: ${meaning}`, width, '  '),
		...(not.length > 0 ? wrap(`not: ${not.join(', ')}`, width - 2, '  ').map(line => `  ${line}`) : []),
	].join('\n');

const width = 79;
