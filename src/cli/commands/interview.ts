import { createInterface } from 'node:readline';
import type { Model } from '../../audit/model.ts';
import { readPreferences } from '../../files/preferences.ts';
import { FileProblem } from '../../files/problem.ts';
import { changeCounts, changeLines } from '../../interview/changes.ts';
import type { Pass } from '../../interview/state.ts';
import { runLines } from '../../plain/face.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { loadModel } from '../assets/model.ts';
import { BadUsage, exit, isForPerson } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { onEndingSignal } from '../process/signals.ts';
import { interviewLogs } from '../sheet/interview-logs.ts';
import { openOrStart } from '../sheet/open.ts';
import { rescue } from '../sheet/rescue.ts';
import { saveAnswers } from '../sheet/save-answers.ts';
import { type Opened, SavedElsewhere, warnUnusual } from '../sheet/sheet.ts';
import { writeAudit } from '../sheet/write-audit.ts';
import { drawn } from './drawn.ts';

export interface InterviewFlags {
	readonly quick?: boolean;
	readonly section?: string;
	readonly plain?: boolean;
	readonly units?: UnitSet;
	readonly rules?: readonly string[];
}

/** Whether this terminal wants lines instead of a drawn screen. */
export function wantsLines(flags: InterviewFlags): boolean {
	return flags.plain === true || process.env.TERM === 'dumb' || Boolean(process.env.INK_SCREEN_READER);
}

/** `swap-audit interview [SHEET]`, and the bare command: fills a sheet, drawn or by lines. */
export async function interview(argument: string | undefined, flags: InterviewFlags): Promise<number> {
	const lines = wantsLines(flags);
	if (!lines && !(process.stdin.isTTY && process.stdout.isTTY)) {
		throw new BadUsage(
			'this is not a terminal: use swap-audit interview SHEET --plain for questions by lines, or swap-audit audit SHEET',
		);
	}
	const model = await loadModel(flags.rules);
	const section = flags.section ?? null;
	if (section !== null && !model.rulebook.sections.some(({ id }) => id === section)) {
		throw new BadUsage(
			`--section: found ${JSON.stringify(section)}; accepted: ${model.rulebook.sections.map(({ id }) => id).join(', ')}`,
		);
	}
	const pass: Pass | null = flags.quick ? 'quick' : null;
	if (!lines) return drawn(model, argument, pass, section, flags.units ?? null);
	if (argument === undefined)
		throw new BadUsage('interview --plain: name a sheet; a path that does not exist starts a new one');
	const usual = (await readPreferences(process.env)).units ?? 'us';
	return byLines(model, openOrStart(argument, model, flags.units ?? null, usual), pass, section);
}

async function byLines(model: Model, opened: Opened, pass: Pass | null, section: string | null): Promise<number> {
	warnUnusual(opened);
	let now = opened;
	// Each answer is in the sheet as soon as it is given.
	onEndingSignal(status => {
		printMessage('Saved.');
		process.exit(status);
	});
	// Nobody reads on: the answers so far are saved, and it was not the end.
	process.exitCode = exit.interrupted;
	const face = {
		lines: createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY }),
		say: print,
		// A mark is for whoever types; a pipe gets whole lines.
		mark: (words: string) => {
			const typed = process.stdin.isTTY && process.stdout.isTTY;
			if (typed) process.stdout.write(words === '' ? '> ' : `${words} > `);
			else if (words !== '') print(words);
		},
		save: (sheet: Opened['sheet']) => {
			try {
				now = saveAnswers(now, sheet);
			} catch (error) {
				if (error instanceof FileProblem && !(error instanceof SavedElsewhere) && now.place.kind !== 'stdin') {
					const rescued = rescue(now.place.path, sheet);
					if (rescued !== null) printMessage(`Your last answers are not saved there. ${rescued}`);
				}
				throw error;
			}
		},
		get width() {
			return Math.min(process.stdout.columns ?? 80, 100);
		},
		get window() {
			const { columns, rows } = process.stdout;
			return process.stdout.isTTY ? { columns, rows } : null;
		},
		logs: { isForPerson, ...interviewLogs(model) },
	};
	const { because, sheet, since } = await runLines(model, opened.sheet, pass, section, face);
	if (because === 'end-of-input') {
		print('No more lines. Saved as it stands.');
		return exit.interrupted;
	}
	const { message, assessment } = writeAudit(model, { ...now, sheet }, since);
	if (assessment?.audit.since) {
		print(`Since ${assessment.audit.since.date}: ${changeCounts(assessment)}`);
		for (const line of changeLines(assessment)) print(`  ${line}`);
	}
	print(`${message}.`);
	return exit.done;
}
