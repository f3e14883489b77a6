import type { Command } from 'commander';

/** A command and all below it. */
export function* everyCommand(command: Command): Generator<Command> {
	yield command;
	for (const below of command.commands) yield* everyCommand(below);
}
