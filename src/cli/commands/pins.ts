import { writeOutput } from '../../files/output.ts';
import { readRaw } from '../../files/read.ts';
import { notRecognized } from '../../plugs/candidates.ts';
import { changesBetween, columnNames, findHalf, type PinTable, readPinFile, withHalf } from '../../plugs/table.ts';
import { renderPins } from '../../report/render.ts';
import { plugProblems } from '../../sheet/check-plugs.ts';
import type { HalfName, PlugHalf } from '../../sheet/plugs.ts';
import { writeSheetProblem } from '../../sheet/problem.ts';
import { BadTable } from '../../table/problem.ts';
import { readRulebook } from '../assets/assets.ts';
import { BadUsage, exit } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { type JudgeFlags, judgeSheet } from '../sheet/judge-sheet.ts';
import { outFormat, refuseSheet } from '../sheet/out-file.ts';
import { type Opened, openSheet, saveSheet } from '../sheet/sheet.ts';

export interface PinsFlags extends JudgeFlags {
	readonly json?: boolean;
	readonly out?: string;
	readonly read?: string;
	readonly plug?: string;
	readonly half?: HalfName;
	readonly mates?: string;
	readonly from?: string;
	readonly column: readonly string[];
}

/** `swap-audit pins SHEET`: the plan of the plugs; with `--read`, a table of pins into the sheet. */
export async function pins(argument: string, flags: PinsFlags): Promise<number> {
	if (flags.read !== undefined) return readInto(argument, flags.read, flags);
	for (const key of ['plug', 'half', 'mates', 'from'] as const)
		if (flags[key] !== undefined) throw new BadUsage(`--${key}: it goes with --read`);
	if (flags.column.length > 0) throw new BadUsage('--column: it goes with --read');
	const format = outFormat(flags.out);
	const assessment = await judgeSheet(argument, { ...flags, draws: 0 }, { gateDraws: 0 });
	if (flags.out !== undefined && format) {
		refuseSheet(flags.out);
		writeOutput(flags.out, renderPins(assessment, format));
	}
	if (flags.json || flags.out === undefined) print(renderPins(assessment, flags.json ? 'json' : 'md'));
	return exit.done;
}

/** Reads a table and puts it into the sheet in place of that half; on a terminal it asks first. */
async function readInto(argument: string, file: string, flags: PinsFlags): Promise<number> {
	const { plug, half, mates, from } = flags;
	if (plug === undefined || plug.trim() === '') throw new BadUsage('--read: which plug is it? --plug NAME');
	if (half === undefined) throw new BadUsage('--read: which half of it? --half engine, car or controller');
	const { rulebook } = readRulebook();
	const opened = openSheet(argument, rulebook.questions);
	if (opened.place.kind === 'stdin') throw new BadUsage('--read: standard input cannot be saved to; name a sheet');
	const { pins } = tableOf(file, flags.column);
	const halves = opened.sheet.plugs ?? [];
	const name = plug.trim();
	const read: PlugHalf = { plug: name, half, ...(mates ? { mates } : {}), ...(from ? { from } : {}), pins };
	const after = withHalf(halves, read);
	const problems = [...plugProblems(after)];
	if (problems.length > 0)
		throw new BadUsage(`${file}: nothing was changed.\n${problems.map(writeSheetProblem).join('\n')}`);
	const changes = changesBetween(halves[findHalf(halves, name, half)], read);
	printMessage(
		[
			`${name}, the ${half}'s half: ${pins.length} pins, ${changes.length} changed`,
			...changes.map(line => `  ${line}`),
			...notRecognized(read, rulebook.vocabulary).map(line => `  ? ${line}`),
		].join('\n'),
	);
	if (!(await agreed())) {
		printMessage('Nothing was changed.');
		return exit.done;
	}
	save(opened, after);
	return exit.done;
}

const save = (opened: Opened, plugs: readonly PlugHalf[]) => saveSheet(opened, { ...opened.sheet, plugs });

function tableOf(file: string, columns: readonly string[]): PinTable {
	const named: Record<string, string> = {};
	for (const word of columns) {
		const at = word.indexOf('=');
		const id = word.slice(0, at).trim();
		if (at < 0 || !columnNames.includes(id) || word.slice(at + 1).trim() === '')
			throw new BadUsage(
				`--column: found ${JSON.stringify(word)}; accepted: NAME=HEADER with a name of ${columnNames.join(', ')}`,
			);
		named[id] = word.slice(at + 1).trim();
	}
	const bytes = readRaw(file);
	try {
		const table = readPinFile(bytes, named);
		if (table.problems.length > 0) throw new BadUsage(`${file}: nothing was changed.\n${table.problems.join('\n')}`);
		return table;
	} catch (error) {
		if (error instanceof BadTable) throw new BadUsage(`${file}: ${error.message}`);
		throw error;
	}
}

/** Off a terminal it is done at once. */
async function agreed(): Promise<boolean> {
	if (!process.stdin.isTTY || !process.stderr.isTTY) return true;
	const { createInterface } = await import('node:readline/promises');
	const lines = createInterface({ input: process.stdin, output: process.stderr });
	const answer = await lines.question('Write this into the sheet? [y/N] ');
	lines.close();
	return /^y(es)?$/i.test(answer.trim());
}
