import type { Argument, Command, Option } from 'commander';
import { listSheets } from '../../files/folders.ts';
import { dataFolder } from '../../files/paths.ts';
import { columnNames } from '../../plugs/table.ts';
import type { Term } from '../../rulebook/rulebook.ts';
import { readAsset, readRulebook } from '../assets/assets.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';

/** A word that may stand next, and what it means. */
type Candidate = readonly [word: string, meaning: string];

/** What may stand next: words, or paths (also of folders) with this ending; '' is any ending. */
interface Next {
	readonly words: readonly Candidate[];
	readonly paths?: string | undefined;
}

const nothing: Next = { words: [] };

/** What stands for a placeholder of the table, by its name. One that has choices of its own needs no line here. */
export const sources: Readonly<Record<string, (program: Command) => Next | Promise<Next>>> = {
	sheet: () => ({
		words: listSheets(dataFolder(process.env)).map(({ name, path }) => [name, path]),
		paths: '.json',
	}),
	file: () => ({ words: [], paths: '' }),
	'day or file': () => ({ words: [], paths: '.json' }),
	pack: () => ({ words: [], paths: '.yaml' }),
	section: () => ({ words: readRulebook().rulebook.sections.map(({ id, title }) => [id, title]) }),
	rule: () => ({ words: readRulebook().rulebook.rules.map(({ id, title }) => [id, title]) }),
	quantity: async () => {
		const { quantities: everyQuantity } = await import('../../log/quantities.ts');
		return { words: everyQuantity.filter(({ kind }) => kind !== 'hidden').map(({ id, nature }) => [id, nature]) };
	},
	topic: program => ({ words: [...namesBelow(program), ['words', 'the words of the trade']] }),
	term: () => ({
		words: (JSON.parse(readAsset('words.json')) as Term[]).map(({ term, meaning }) => [term, meaning]),
	}),
	log: () => ({ words: [], paths: '' }),
	'name=header@unit': () => ({ words: readRulebook().rulebook.channels.map(({ id, title }) => [`${id}=`, title]) }),
	'name=header': () => ({ words: columnNames.map(name => [`${name}=`, 'a column of a table of pins']) }),
	header: () => nothing,
	name: () => nothing,
	text: () => nothing,
	day: () => nothing,
	count: () => nothing,
	minutes: () => nothing,
};

/** `swap-audit complete -- WORD...`: a candidate a line with its meaning after a tab, or `/` and the ending of paths. */
export async function complete(program: Command, words: readonly string[]): Promise<number> {
	const { words: candidates, paths } = await nextAfter(program, words);
	const lines = candidates.map(([word, meaning]) => `${word}\t${meaning.replaceAll(/\s+/g, ' ')}`);
	if (paths !== undefined) lines.push(`/${paths}`);
	if (lines.length > 0) print(lines.join('\n'));
	return exit.done;
}

/** What may stand where the last of the words is being written. */
async function nextAfter(program: Command, words: readonly string[]): Promise<Next> {
	const { before, last, glued } = split(words);
	let command = program;
	let taken = 0;
	let waiting: Option | undefined;
	for (const word of before) {
		const option: Option | undefined = waiting ? undefined : optionOf(command, word);
		const below = waiting || option || taken > 0 ? undefined : command.commands.find(each => each.name() === word);
		if (below) command = below;
		else if (!waiting && !option) taken++;
		waiting = option?.required ? option : undefined;
	}
	if (waiting) return starting(await valuesOf(program, waiting, placeholder(waiting)), last, glued);
	if (last.startsWith('-')) return starting({ words: optionsOf(command) }, last);
	const argument = command.registeredArguments[taken] ?? command.registeredArguments.findLast(each => each.variadic);
	const below = taken === 0 ? namesBelow(command) : [];
	if (!argument) return starting({ words: below.length > 0 ? below : optionsOf(command) }, last);
	return starting(await valuesOf(program, argument, argument.name()), last);
}

/** `--units=me` as two words, however the shell cut it: zsh and fish leave it whole, bash makes three words of it. */
function split(words: readonly string[]) {
	const whole = words.at(-1) ?? '';
	const cut = /^(--[^=]+)=(.*)$/.exec(whole);
	const before = [...words.slice(0, -1), ...(cut ? [cut[1]!] : [])].filter(word => word !== '=');
	return { before, last: cut ? cut[2]! : whole === '=' ? '' : whole, glued: cut ? `${cut[1]}=` : '' };
}

function starting({ words, paths }: Next, begun: string, glued = ''): Next {
	const fitting = words.filter(([word]) => word.startsWith(begun));
	return { words: fitting.map(([word, meaning]) => [glued + word, meaning]), paths };
}

const optionOf = (command: Command, word: string): Option | undefined =>
	command.options.find(({ long, short }) => word === long || word === short);

/** `--gate <stage>` waits for a stage. */
const placeholder = ({ flags }: Option): string => /<(.+)>/.exec(flags)?.[1] ?? '';

function valuesOf(program: Command, { argChoices }: Option | Argument, name: string): Next | Promise<Next> {
	if (argChoices) return { words: argChoices.map(choice => [choice, '']) };
	return sources[name]?.(program) ?? nothing;
}

const optionsOf = (command: Command): Candidate[] =>
	command
		.createHelp()
		.visibleOptions(command)
		.map(({ long, flags, description }) => [long ?? flags, description]);

const namesBelow = (command: Command): Candidate[] =>
	command
		.createHelp()
		.visibleCommands(command)
		.map(below => [below.name(), below.summary()]);
