import { basename } from 'node:path';
import type { Model } from '../../audit/model.ts';
import { recordWords } from '../../audit/record.ts';
import { exists } from '../../files/exists.ts';
import { listSheets } from '../../files/folders.ts';
import { dataFolder } from '../../files/paths.ts';
import { keepPreferences, readPreferences } from '../../files/preferences.ts';
import { textOf } from '../../files/read.ts';
import { start } from '../../interview/session.ts';
import { countWords, type Pass } from '../../interview/state.ts';
import { checkSheet } from '../../sheet/check.ts';
import { parseSheet } from '../../sheet/parse.ts';
import type { UnitSet } from '../../sheet/question.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { readAsset } from '../assets/assets.ts';
import { version } from '../assets/version.ts';
import { today } from '../options/values.ts';
import { exit, isForPerson } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { onEndingSignal } from '../process/signals.ts';
import { interviewLogs } from '../sheet/interview-logs.ts';
import { openOrStart } from '../sheet/open.ts';
import { rescue } from '../sheet/rescue.ts';
import { saveAnswers } from '../sheet/save-answers.ts';
import { type Opened, resumeHint, SavedElsewhere } from '../sheet/sheet.ts';
import { writeAudit } from '../sheet/write-audit.ts';

/** The drawn face on a sheet, or on its opening screen. */
export async function drawn(
	model: Model,
	argument: string | undefined,
	pass: Pass | null,
	section: string | null,
	units: UnitSet | null,
): Promise<number> {
	// Both are read when the drawing library is imported.
	if (process.env.NO_COLOR) process.env.FORCE_COLOR = '0';
	const { recent, units: kept } = await readPreferences(process.env);
	const usual = kept ?? 'us';
	let now: Opened | null = argument === undefined ? null : openOrStart(argument, model, units, usual);
	const opened = (sheet: Opened): Sheet => {
		now = sheet;
		return sheet.sheet;
	};
	const forks: string[] = [];
	/** Work that may find that another program wrote the sheet: it goes on in the file that is ours now. */
	const followed = <T>(work: () => T): T => {
		try {
			return work();
		} catch (error) {
			if (error instanceof SavedElsewhere) {
				now = error.opened;
				forks.push(error.message);
			}
			throw error;
		}
	};
	let chosen: UnitSet | null = null;
	const host = {
		isForPerson,
		found: argument === undefined ? found(model, recent) : [],
		open: (path: string) => opened(path === 'demo' ? demo(model) : openOrStart(path, model, units, usual)),
		units: units ?? usual,
		create: (name: string, set: UnitSet) => {
			chosen = set;
			return opened(openOrStart(name, model, set, usual));
		},
		isFork: (error: Error) => error instanceof SavedElsewhere,
		onEndingSignal,
		...interviewLogs(model),
		save: (sheet: Sheet) =>
			followed(() => {
				if (now) now = saveAnswers(now, sheet);
				return now?.sheet ?? sheet;
			}),
		writeAudit: (sheet: Sheet, since: number | null) => {
			const answered = followed(() => saveAnswers(now!, sheet));
			now = answered;
			const written = followed(() => writeAudit(model, answered, since));
			now = written.opened;
			return { message: written.message, sheet: now.sheet };
		},
	};
	const { runDrawn } = await import('../../tui/run.tsx');
	const opening = { model, today: today(), tool: version, sheet: now?.sheet ?? null, pass, section };
	const { status, sheet, unsaved } = await runDrawn(opening, host);
	for (const reason of forks) printMessage(reason);
	const place = (now as Opened | null)?.place;
	if (unsaved) {
		printMessage(`Your last answers are not saved: ${unsaved.message}`);
		const rescued = sheet && place && place.kind !== 'stdin' ? rescue(place.path, sheet) : null;
		if (rescued !== null) printMessage(rescued);
		return status === exit.done ? exit.badInput : status;
	}
	if (sheet && place && place.kind !== 'stdin') {
		if (status === exit.done)
			await keepPreferences(process.env, { recent: [place.path, ...recent], ...(chosen ? { units: chosen } : {}) });
		print(`Saved in ${place.path}, ${countWords(start(model, sheet, 'full'))}.`);
	}
	return status;
}

/** The sheets in the data folder, then those used lately elsewhere, each with how far it is. */
function found(model: Model, recent: readonly string[]) {
	const own = listSheets(dataFolder(process.env));
	const known = new Set(own.map(({ path }) => path));
	const elsewhere = recent.filter(path => !known.has(path) && exists(path)).map(path => ({ path, text: textOf(path) }));
	return [...own, ...elsewhere].map(({ path, text }) => ({
		path,
		name: basename(path, '.json'),
		words: wordsOf(path, text, model),
	}));
}

function wordsOf(path: string, text: string | null, model: Model): string {
	try {
		const { sheet } = checkSheet(parseSheet(text ?? ''), model.rulebook.questions);
		const last = sheet.audits.at(-1);
		const stage = sheet.answers.build?.stage?.value;
		return [
			stage === undefined ? '' : String(stage),
			countWords(start(model, sheet, 'full')),
			last ? `${last.date}: ${recordWords(last)}` : 'no audit yet',
		]
			.filter(Boolean)
			.join(', ');
	} catch {
		return resumeHint(path) === ''
			? 'cannot be read: Enter says why'
			: 'cannot be read; its last good copy is kept: Enter says where';
	}
}

/** The demo build: looked at from a copy that nothing is saved to. */
function demo(model: Model): Opened {
	return {
		...checkSheet(parseSheet(readAsset('demo.json')), model.rulebook.questions),
		place: { kind: 'stdin' },
		mark: null,
	};
}
