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

/** What each command takes and what help says of it, in the order of help. */
const commands = [
	interview,
	audit,
	plan,
	recheck,
	parts,
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
];

/** What help shows first; the rest is under *more*. */
const first = ['interview', 'audit', 'plan', 'recheck'];

/**
 * The table of every command; what does the work is loaded when one is called, and `status` gets its exit status. Help, the
 * completion of the shells and the manual page are made from it: a placeholder's name says what stands there.
 */
export function commandTable(status: Status): Command {
	const program = new Command('swap-audit').description(
		'Audits a home-built V8 engine swap: asks, computes, judges, and writes a prioritized list with cautions.',
	);
	for (const add of commands) add(program, status);
	for (const command of program.commands) command.helpGroup(first.includes(command.name()) ? 'Commands:' : 'More:');
	return program;
}

/** A command and all below it. */
export function* everyCommand(command: Command): Generator<Command> {
	yield command;
	for (const below of command.commands) yield* everyCommand(below);
}
