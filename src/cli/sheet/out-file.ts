import { dirname, extname } from 'node:path';
import { exists } from '../../files/exists.ts';
import { textOf } from '../../files/read.ts';
import { endings, type Format } from '../../report/formats.ts';
import { BadUsage } from '../process/exit.ts';

/** An audit is never written over a sheet, whether it is named by its own path or through a link. */
export function refuseSheet(out: string): void {
	if (!/"format"\s*:\s*"swap-audit\/sheet"/.test(textOf(out) ?? '')) return;
	throw new BadUsage(`--out: found ${JSON.stringify(out)}, which is a sheet; accepted: the name of another file`);
}

/** What a file is written as, by its ending; null for none. Throws BadUsage for another ending, or a folder that is not there. */
export function outFormat(out: string | undefined, accepted: readonly string[] = endings): Format | null {
	if (out === undefined) return null;
	const folder = dirname(out);
	if (!exists(folder)) throw new BadUsage(`--out: there is no folder ${JSON.stringify(folder)}; make it first`);
	const ending = extname(out).toLowerCase();
	if (accepted.includes(ending)) return ending.slice(1) as Format;
	throw new BadUsage(`--out: found ${JSON.stringify(out)}; accepted: a file ending in ${accepted.join(', ')}`);
}
