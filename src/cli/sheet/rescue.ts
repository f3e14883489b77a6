import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { homeFolder } from '../../files/paths.ts';
import { FileProblem, shown } from '../../files/problem.ts';
import { saveWhole } from '../../files/save.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { writeSheet } from '../../sheet/write.ts';

/**
 * Puts a sheet that cannot be saved where it belongs into the temporary folder, or the home folder. Returns where it is and
 * how it gets back, in words; null when neither takes it.
 */
export function rescue(path: string, sheet: Sheet): string | null {
	for (const folder of [tmpdir(), homeFolder(process.env)]) {
		if (folder === dirname(path)) continue;
		const there = join(folder, `${basename(path, '.json')}.unsaved-${process.pid}.json`);
		try {
			if (saveWhole(there, writeSheet(sheet), null).result !== 'saved') continue;
			return `They are in ${shown(there)}. Once the cause is fixed, move that file over ${shown(path)}.`;
		} catch (error) {
			if (!(error instanceof FileProblem)) throw error;
		}
	}
	return null;
}
