import { readFileSync } from 'node:fs';
import type { Command } from 'commander';
import { version } from '../cli/assets/version.ts';
import { commandTable } from '../cli/command-table.ts';
import { describe, helpText } from '../cli/options/help-text.ts';

/** Prints the manual page, as mdoc (the language of manual pages), from the table of commands and the notes of its help. */
const program = commandTable(() => {});
const help = program.createHelp();

/** A text that no line of mdoc takes for a request; each sentence begins a line, as formatters want it. */
function text(words: string): string {
	return words
		.replaceAll('\\', '\\e')
		.replaceAll('-', '\\-')
		.replace(/([.:;]) (?=[A-Z~])/g, '$1\n')
		.split('\n')
		.map(line => line.replace(/^([.'])/, '\\&$1'))
		.join('\n');
}

/** Flags and placeholders: `--gate <stage>` as a flag and its argument. */
function flags(words: string): string {
	return words
		.split(', ')
		.map(flag => {
			const [, name, value] = /^-(\S+)(?: <(.+)>)?$/.exec(flag)!;
			return `Fl ${name!.replaceAll('-', '\\-')}${value ? ` Ar ${value}` : ''}`;
		})
		.join(' , ');
}

/** The lines that show how a command is called. */
function call(path: readonly string[], command: Command): string[] {
	const options = help.visibleOptions(command).some(({ long }) => long !== '--help') ? ['.Op Ar option ...'] : [];
	const takes = command.registeredArguments.map(argument => {
		const name = `Ar ${argument.name()}${argument.variadic ? ' ...' : ''}`;
		return argument.required ? `.${name}` : `.Op ${name}`;
	});
	return [`.Nm Cm ${path.join(' ')}`, ...options, ...takes];
}

/** The day of this version in the list of changes: the page must not change with the calendar. */
function released(): string {
	const [, day] = /^## \S+ \((\d{4}-\d{2}-\d{2})\)$/m.exec(readFileSync('CHANGELOG.md', 'utf8')) ?? [];
	if (day === undefined) throw new Error('CHANGELOG.md: its first version has no date, as in "## 1.2.3 (2026-05-01)"');
	return new Date(day).toLocaleDateString('en-US', { dateStyle: 'long', timeZone: 'UTC' });
}

const list = (rows: readonly (readonly [string, string])[]): string[] =>
	rows.length === 0
		? []
		: ['.Bl -tag -width Ds', ...rows.flatMap(([head, words]) => [`.It ${head}`, text(words)]), '.El'];

function chapter(command: Command, above: readonly string[] = []): string[] {
	const below = help.visibleCommands(command).filter(each => each.name() !== 'help');
	const path = [...above, command.name()];
	const own = [
		`.Ss ${path.join(' ')}`,
		...(below.length > 0 ? [`.Nm Cm ${path.join(' ')} Ar command`] : call(path, command)),
		'.Pp',
		text(command.description()),
		...list([
			...command.registeredArguments.map(argument => [`Ar ${argument.name()}`, describe(argument)] as const),
			...help
				.visibleOptions(command)
				.filter(({ long }) => long !== '--help')
				.map(option => [flags(option.flags), describe(option)] as const),
		]),
	];
	return [...own, ...below.flatMap(each => chapter(each, path))];
}

const page = [
	`.Dd ${released()}`,
	'.Dt SWAP-AUDIT 1',
	`.Os swap-audit ${version}`,
	'.Sh NAME',
	'.Nm swap-audit',
	'.Nd audits a home-built V8 engine swap',
	'.Sh SYNOPSIS',
	'.Nm',
	'.Nm',
	'.Ar command',
	'.Op Ar option ...',
	'.Sh DESCRIPTION',
	text(program.description()),
	text(helpText.start),
	'.Pp',
	text(helpText.sheet),
	'.Pp',
	text(helpText.advice),
	'.Sh COMMANDS',
	...help.visibleCommands(program).flatMap(command => chapter(command)),
	'.Sh ENVIRONMENT',
	...list(helpText.environment.map(([name, words]) => [`Ev ${name}`, words])),
	'.Sh EXIT STATUS',
	...list(helpText.status.map(([status, words]) => [`${status}`, words])),
	'.Sh EXAMPLES',
	...helpText.examples.flatMap(([line, words]) => [
		`${words[0]!.toUpperCase()}${text(words.slice(1))}:`,
		`.Dl ${text(line)}`,
		'.Pp',
	]),
];
console.log(page.slice(0, -1).join('\n'));
