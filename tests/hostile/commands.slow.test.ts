import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Command, Option } from 'commander';
import { describe, expect, test } from 'vitest';
import { commandTable, everyCommand } from '../../src/cli/command-table.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { counts, seed } from '../counts.ts';
import { brokenBuild } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { testModel } from '../support/model.ts';

// Every command is found by walking the table, so that a new one is tried as well.

const hostile = 'a\u001b]0;gone\u0007\u001b[2J\u0000\u009b31m\u202eb\u{e0041}\u200b|<b>[x](y)`=1';
/** What a terminal obeys or hides: all control characters but line ends and tabs, marks that turn the writing, tags. */
const obeyed =
	/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200b\u200e\u200f\u202a-\u202e\u2066-\u2069]|[\u{e0000}-\u{e007f}]/u;

const commands = [...everyCommand(commandTable(() => {}))].filter(
	command => command.commands.length === 0 && command.parent,
);
const pathOf = (command: Command): string[] => (command.parent ? [...pathOf(command.parent), command.name()] : []);

/** A folder with what commands ask for: a sheet and its texts, a log, a table of pins, each with hostile text in it. */
function garage() {
	const home = temporaryFolder();
	const sheet = join(home, 'mule.json');
	const plugs = [
		{ plug: hostile, half: 'engine', pins: [{ pin: '1', wire: 'RD', circuit: `${hostile} feed`, note: hostile }] },
		{ plug: hostile, half: 'car', pins: [{ pin: '1', wire: hostile, circuit: 'keep-alive feed' }] },
	];
	writeFileSync(sheet, writeSheet({ ...brokenBuild(hostile), plugs } as never));
	const table = join(home, 'table.csv');
	writeFileSync(table, `Time (s),Engine speed (rpm),${hostile}\n0,800,1\n0.1,810,2\n0.2,805,3\n0.3,800,4\n`);
	const pins = join(home, 'pins.csv');
	writeFileSync(pins, `pin,wire,circuit\nA1,RD,${hostile}\n`);
	return { home, sheet, table, pins };
}

type Garage = ReturnType<typeof garage>;

/** What stands for a placeholder, by its name. */
function operand(name: string, { sheet, table }: Garage): string {
	const { rulebook } = testModel();
	const known: Readonly<Record<string, string>> = {
		sheet,
		log: table,
		rule: rulebook.rules[0]!.id,
		quantity: 'engine.power',
		shell: 'bash',
		word: 'audit',
	};
	return known[name] ?? hostile;
}

const operands = (command: Command, at: Garage): string[] =>
	command.registeredArguments
		.filter(({ required }) => required || command.name() === 'audit' || command.name() === 'interview')
		.map(argument => operand(argument.name(), at));

const quick = (command: Command): string[] =>
	command.options.some(({ long }) => long === '--draws') ? ['--draws', '0', '--date', '2026-05-01'] : [];

function isHarmless({ status, out, err }: { status: number | null; out: string; err: string }, what: string): void {
	expect([0, 1, 2, 130], `${what}: ${err}`).toContain(status);
	expect(obeyed.exec(out), `${what}, printed`).toBeNull();
	expect(obeyed.exec(err), `${what}, said`).toBeNull();
}

describe('hostile text in a sheet, a log and a table never reaches the terminal', () => {
	test.each(commands.map(command => [pathOf(command).join(' '), command] as const))('%s', (name, command) => {
		const at = garage();
		const forms = [[], ['--json']].filter(([flag]) => !flag || command.options.some(({ long }) => long === flag));
		for (const form of forms) {
			const plain = name === 'interview' ? ['--plain'] : [];
			const args = [...pathOf(command), ...operands(command, at), ...form, ...plain, ...quick(command)];
			isHarmless(runCommand(args, { home: at.home, input: `${hostile}\n` }), args.join(' '));
		}
	});

	test('nor does that of a pack, an argument or an option', () => {
		const at = garage();
		const pack = join(at.home, 'pack.yaml');
		writeFileSync(pack, 'topic: "a\\e]0;gone\\a"\nplace: 1\n');
		for (const args of [
			['rules', 'list', pack],
			['audit', at.sheet, '--rules', pack],
			['audit', `${at.home}/${hostile.replaceAll('\0', '')}.json`],
			['rules', 'show', hostile.replaceAll('\0', '')],
			['questions', hostile.replaceAll('\0', '')],
			[hostile.replaceAll('\0', '')],
		])
			isHarmless(runCommand(args, { home: at.home }), args[0]!);
	});
});

/** A value for an option: one that is accepted, or anything. */
function valueFor({ argChoices, long }: Option, at: Garage, random: () => number): string {
	const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
	if (argChoices && random() < 0.7) return pick(argChoices);
	if (long === '--out') return join(at.home, `out${pick(['.md', '.html', '.json', '.csv', '.txt', ''])}`);
	return pick([
		at.sheet,
		at.table,
		at.pins,
		at.home,
		'0',
		'60',
		'-1',
		'1e9',
		'NaN',
		'2026-02-30',
		'2026-05-01',
		'engine',
		'',
		'pin=pin',
		'x=y@z',
		hostile.replaceAll('\0', ''),
	]);
}

describe('whatever options a command is given, it ends with a status of its own, and the sheet can be read', () => {
	const withOptions = commands.filter(({ options }) => options.length > 0);
	test.each(withOptions.map(command => [pathOf(command).join(' '), command] as const))('%s', (name, command) => {
		const random = chance(seed);
		for (let run = 0; run < counts.commandRuns; run++) {
			const at = garage();
			const before = readFileSync(at.sheet, 'utf8');
			const flags = command.options
				.filter(() => random() < 0.35)
				.flatMap(option => (option.required ? [option.long!, valueFor(option, at, random)] : [option.long!]));
			const plain = name === 'interview' ? ['--plain'] : [];
			const args = [...pathOf(command), ...operands(command, at), ...flags, ...plain];
			const ran = runCommand(args, { home: at.home, input: '1\n\n' });
			isHarmless(ran, args.join(' '));
			// What was refused left everything as it was.
			if (ran.status === 2 && name !== 'interview') {
				expect(readFileSync(at.sheet, 'utf8'), args.join(' ')).toBe(before);
				expect(readdirSync(at.home).filter(file => file.startsWith('out'))).toEqual([]);
			}
			JSON.parse(readFileSync(at.sheet, 'utf8'));
		}
	});
});
