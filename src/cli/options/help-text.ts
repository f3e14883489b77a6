import type { Argument, Option } from 'commander';
import { exit } from '../process/exit.ts';

/** What `--help` and the manual page say besides the commands' own table. */
export const helpText = {
	sheet:
		'SHEET is a path (it has a slash, or ends in .json), the name of a sheet in the data folder, or - for standard input.',
	start: 'swap-audit alone opens the interview: your sheets, a new one, a demo.',
	advice: 'It advises. Local law and the people licensed to inspect, weld, wire and recharge decide.',
	examples: [
		['swap-audit interview my-build.json --quick', '12 to 20 minutes of questions'],
		['swap-audit audit my-build.json --out audit.md', 'what to do, in which order'],
		['swap-audit plan my-build.json', 'what to do tonight'],
		['swap-audit next my-build.json', 'what to measure next'],
		['swap-audit recheck my-build.json --out audit.md', 'again, and what changed'],
	],
	status: [
		[exit.done, 'done'],
		[exit.notPassed, 'the gate is not passed, or a rule example came out wrong'],
		[exit.badInput, 'wrong usage, a bad sheet, a file that cannot be read or written'],
		[exit.bug, 'a bug in swap-audit'],
		[exit.hangUp, 'stopped by a hang-up; the answers are saved'],
		[exit.interrupted, 'interrupted, or the input ended; the answers are saved'],
		[exit.terminated, 'terminated; the answers are saved'],
	],
	environment: [
		['XDG_DATA_HOME', 'named sheets are in the folder swap-audit under it (usually ~/.local/share)'],
		['XDG_CONFIG_HOME', 'preferences are in the folder swap-audit under it (usually ~/.config)'],
		['NO_COLOR, FORCE_COLOR', 'no color, or color in spite of a pipe'],
		['TERM', 'dumb: questions by lines'],
		['SWAP_AUDIT_TRACE', 'if set, a bug is printed with the place in the program'],
	],
} as const;

/** What an option or an argument is for, with its choices. */
export const describe = ({ description, argChoices }: Option | Argument): string =>
	argChoices ? `${description}: ${argChoices.join(', ')}` : description;
