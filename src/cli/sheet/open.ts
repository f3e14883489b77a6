import { basename, dirname } from 'node:path';
import type { Model } from '../../audit/model.ts';
import { exists } from '../../files/exists.ts';
import { makeFolder } from '../../files/folders.ts';
import { locateSheet } from '../../files/paths.ts';
import { sweep } from '../../files/sweep.ts';
import type { UnitSet } from '../../sheet/question.ts';
import { emptySheet } from '../../sheet/sheet.ts';
import { BadUsage } from '../process/exit.ts';
import { type Opened, openSheet, saveSheet } from './sheet.ts';

/**
 * The sheet that is there, or a new one named after its file.
 *
 * @param units the units of questions and results from now on; null: as it is, `usual` for a new one
 */
export function openOrStart(argument: string, model: Model, units: UnitSet | null, usual: UnitSet): Opened {
	const place = locateSheet(argument, process.env, process.cwd());
	if (place.kind === 'stdin') throw new BadUsage('interview: standard input cannot be saved to; name a sheet');
	const folder = dirname(place.path);
	if (exists(folder)) sweep(folder);
	else if (place.kind === 'path') throw new BadUsage(`there is no folder ${JSON.stringify(folder)}; make it first`);
	if (exists(place.path)) {
		const opened = openSheet(argument, model.rulebook.questions);
		return units === null ? opened : { ...opened, sheet: { ...opened.sheet, units } };
	}
	if (place.kind === 'name') makeFolder(folder);
	const sheet = emptySheet(basename(place.path).replace(/\.json$/, ''), units ?? usual);
	return saveSheet({ sheet, warnings: [], place, mark: null }, sheet);
}
