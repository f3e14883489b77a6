import { Command } from 'commander';
import { interview } from './usage/interview.ts';
import { audit, parts, recheck } from './usage/judging.ts';
import { channels, circuits, quantities, questions } from './usage/lists.ts';
import { log } from './usage/log.ts';
import { pins } from './usage/pins.ts';
import { plan } from './usage/plan.ts';
import { rules } from './usage/rules.ts';
import { complete, completion, help } from './usage/shell.ts';
import type { Status } from './usage/words.ts';

/** What each command takes and what help says of it, by its name and in the order of help. */
const commands: Readonly<Record<string, (program: Command, status: Status) => void>> = {
	interview,
	audit,
	plan,
	recheck,
	limits: parts,
	next: parts,
	readings: parts,
	rules,
	quantities,
	questions,
	pins,
	circuits,
	log,
	channels,
	completion,
	help,
	complete,
};

/** What these print is made from the table. */
const aboutAll = ['help', 'complete'];

/** What help shows first; the rest is under *more*. */
const first = ['interview', 'audit', 'plan', 'recheck'];

/**
 * The table of every command; what does the work is loaded when one is called, and `status` gets its exit status. Help, the
 * completion of the shells and the manual page are made from it: a placeholder's name says what stands there. Where a command is
 * `called` by its name the others are left out, unless it speaks of all.
 */
export function commandTable(status: Status, called = ''): Command {
	const program = new Command('swap-audit').description(
		'Audits a home-built V8 engine swap: asks, computes, judges, and writes a prioritized list with cautions.',
	);
	const alone = Object.hasOwn(commands, called) && !aboutAll.includes(called);
	for (const add of alone ? [commands[called]!] : new Set(Object.values(commands))) add(program, status);
	for (const command of program.commands) command.helpGroup(first.includes(command.name()) ? 'Commands:' : 'More:');
	return program;
}

/** A command and all below it. */
export function* everyCommand(command: Command): Generator<Command> {
	yield command;
	for (const below of command.commands) yield* everyCommand(below);
}
