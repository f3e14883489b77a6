import { existsSync } from 'node:fs';
import { basename } from 'node:path';
import type { Model } from '../../audit/model.ts';
import { listSheets } from '../../files/folders.ts';
import { dataFolder } from '../../files/paths.ts';
import { keepPreferences, readPreferences } from '../../files/preferences.ts';
import { textOf } from '../../files/read.ts';
import { start } from '../../interview/session.ts';
import { answeredCount, type Pass } from '../../interview/state.ts';
import { checkSheet } from '../../sheet/check.ts';
import { parseSheet } from '../../sheet/parse.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { readAsset } from '../assets/assets.ts';
import { version } from '../assets/version.ts';
import { today } from '../options/values.ts';
import { exit, isForPerson } from '../process/exit.ts';
import { print, printMessage } from '../process/output.ts';
import { openOrStart } from '../sheet/open.ts';
import { type Opened, resumeHint, SavedElsewhere, saveSheet } from '../sheet/sheet.ts';
import { writeAudit } from '../sheet/write-audit.ts';

/** The drawn face on a sheet, or on its opening screen. */
export async function drawn(
	model: Model,
	argument: string | undefined,
	pass: Pass,
	section: string | null,
): Promise<number> {
	// Both are read when the drawing library is imported.
	if (process.env.NO_COLOR) process.env.FORCE_COLOR = '0';
	let now: Opened | null = argument === undefined ? null : openOrStart(argument, model);
	const opened = (sheet: Opened): Sheet => {
		now = sheet;
		return sheet.sheet;
	};
	const { recent } = await readPreferences(process.env);
	const machine = {
		isForPerson,
		found: argument === undefined ? found(model, recent) : [],
		open: (path: string) => opened(path === 'demo' ? demo(model) : openOrStart(path, model)),
		create: (name: string) => opened(openOrStart(name, model)),
		save: (sheet: Sheet) => {
			try {
				if (now) now = saveSheet(now, sheet);
			} catch (error) {
				if (error instanceof SavedElsewhere) now = error.opened;
				throw error;
			}
		},
		writeAudit: (sheet: Sheet, since: number | null) => {
			const written = writeAudit(model, { ...now!, sheet }, since);
			now = written.opened;
			return { told: written.told, sheet: now.sheet };
		},
	};
	const { runDrawn } = await import('../../tui/run.tsx');
	const opening = { model, today: today(), tool: version, sheet: now?.sheet ?? null, pass, section };
	const { status, sheet, unsaved } = await runDrawn(opening, machine);
	const place = (now as Opened | null)?.place;
	if (unsaved) {
		printMessage(`Your last answers are not saved: ${unsaved.message}`);
		return status === exit.done ? exit.badInput : status;
	}
	if (sheet && place && place.kind !== 'stdin') {
		if (status === exit.done) await keepPreferences(process.env, { recent: [place.path, ...recent] });
		print(`Saved in ${place.path}, ${answeredCount(start(model, sheet, 'full'))} answered.`);
	}
	return status;
}

/** The sheets in the data folder, then those used lately elsewhere, each with how far it is. */
function found(model: Model, recent: readonly string[]) {
	const own = listSheets(dataFolder(process.env));
	const known = new Set(own.map(({ path }) => path));
	const elsewhere = recent
		.filter(path => !known.has(path) && existsSync(path))
		.map(path => ({ path, text: textOf(path) }));
	return [...own, ...elsewhere].map(({ path, text }) => ({
		path,
		name: basename(path, '.json'),
		told: toldOf(path, text, model),
	}));
}

function toldOf(path: string, text: string | null, model: Model): string {
	try {
		const { sheet } = checkSheet(parseSheet(text ?? ''), model.rulebook.questions);
		const last = sheet.audits.at(-1);
		const fails = last?.verdicts.filter(({ verdict }) => verdict === 'fails').length;
		const stage = sheet.answers.build?.stage?.value;
		return [
			stage === undefined ? '' : String(stage),
			`${answeredCount(start(model, sheet, 'full'))} answered`,
			last ? `${last.date}: ${fails} to mend` : 'no audit yet',
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
