import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { commandTable, everyCommand } from '../../src/cli/command-table.ts';
import { sources } from '../../src/cli/commands/complete.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';

/** What may stand next, without the meanings. */
function next(words: readonly string[], home = '/nonexistent'): string[] {
	const { out, status } = runCommand(['complete', '--', ...words], { home });
	expect(status).toBe(0);
	return out
		.split('\n')
		.slice(0, -1)
		.map(line => line.split('\t')[0]!);
}

test.each([
	['a command begun', ['aud'], ['audit']],
	['a command below another', ['rules', 'sh'], ['show']],
	['a choice', ['audit', '--gate', ''], ['install', 'crank', 'fire', 'move', 'boost', 'tidy']],
	['a choice after =, in one word', ['audit', '--units=m'], ['--units=metric']],
	['a choice after =, in three words', ['audit', '--units', '=', 'm'], ['metric']],
	['a choice after =, nothing begun', ['audit', '--units', '='], ['us', 'metric']],
	['a choice of an argument', ['completion', 'z'], ['zsh']],
	['an option begun', ['audit', 'car.json', '--rec'], ['--record']],
	['a rule pack', ['audit', '--rules', ''], ['/.yaml']],
	['any file', ['audit', '--out', ''], ['/']],
	['nothing that could be known', ['audit', '--date', ''], []],
	['a section', ['interview', '--section', 'ign'], ['ignition']],
	['a rule', ['rules', 'show', 'ignition.gap-too'], ['ignition.gap-too-wide']],
	['a rule pack after a rule, again and again', ['rules', 'show', 'x', 'y.yaml', ''], ['/.yaml']],
	['a quantity', ['quantities', 'injectors.duty'], ['injectors.duty']],
	['an option where nothing else is taken', ['questions', ''], ['--json', '--schema', '--help']],
	[
		'an option after the last argument',
		['limits', 'car.json', ''],
		['--json', '--units', '--rules', '--unfitted', '--help'],
	],
	['an option of the whole program', ['--v'], ['--version']],
])('%s', (_what, words, wanted) => {
	expect(next(words)).toEqual(wanted);
});

test('a sheet is one of the data folder by name, or a path', () => {
	const home = temporaryFolder();
	mkdirSync(join(home, 'swap-audit'));
	writeFileSync(join(home, 'swap-audit', 'Shed pickup.json'), '{}');
	expect(next(['audit', 'Sh'], home)).toEqual(['Shed pickup', '/.json']);
	expect(next(['audit', 'x'], home)).toEqual(['/.json']);
});

test('each command is offered by name, hidden ones are not', () => {
	const offered = next(['']);
	expect(offered).toContain('audit');
	expect(offered).not.toContain('complete');
});

test('a command that is called is as it stands among all', () => {
	for (const command of commandTable(() => {}).commands) {
		const called = commandTable(() => {}, command.name()).commands.find(other => other.name() === command.name());
		expect(called?.helpInformation(), command.name()).toBe(command.helpInformation());
	}
});

test('the completion knows every placeholder of the table, or it has choices', () => {
	for (const command of everyCommand(commandTable(() => {}))) {
		const options = command.options.map(({ flags, argChoices }) => [/<(.+)>/.exec(flags)?.[1], argChoices] as const);
		const taken = command.registeredArguments.map(argument => [argument.name(), argument.argChoices] as const);
		for (const [name, choices] of [...options, ...taken]) {
			if (name === undefined || choices || command.name() === 'complete') continue;
			expect(Object.keys(sources), command.name()).toContain(name);
		}
	}
});
