import { userInfo } from 'node:os';
import { isAbsolute, join, posix, resolve, win32 } from 'node:path';
import { deviceName } from './names.ts';
import { FileProblem } from './problem.ts';

/** What SHEET on the command line means. A name lives in the data folder, which may not exist yet. */
export type Place = { kind: 'stdin' } | { kind: 'path' | 'name'; path: string };
type Env = Record<string, string | undefined>;

/**
 * Reads SHEET: `-` is standard input, a slash or the ending `.json` makes a path, else it is a name.
 *
 * @throws FileProblem for a name that could lead out of the data folder, or that cannot be a file's name everywhere.
 */
export function locateSheet(sheet: string, env: Env, cwd: string, platform = process.platform): Place {
	if (sheet === '-') return { kind: 'stdin' };
	if (/[\\/]$/.test(sheet)) throw new FileProblem(sheet, 'this names a folder', 'Name a file in it.');
	if (sheet.includes('/') || sheet.endsWith('.json') || (platform === 'win32' && sheet.includes('\\'))) {
		if (sheet.includes('\0')) throw new FileProblem(sheet, 'a zero character in a path', 'Check the spelling.');
		return { kind: 'path', path: resolve(cwd, sheet) };
	}
	const wrong = wrongInName(sheet);
	if (wrong !== null) {
		const todo = 'Use letters, digits, spaces and hyphens, or a path with a slash in it.';
		throw new FileProblem(sheet, `this cannot be the name of a sheet: ${wrong}`, todo);
	}
	return { kind: 'name', path: join(dataFolder(env, platform), `${sheet.normalize('NFC')}.json`) };
}

/** Names are kept to what every system can hold, because sheets move between computers. */
function wrongInName(name: string): string | null {
	if (name.trim() === '') return 'it is empty';
	if (/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/u.test(name)) return 'it has a control character in it';
	const sign = /[\\/:*?"<>|]/.exec(name)?.[0];
	if (sign !== undefined) return `it has ${sign} in it`;
	if (/^[.\s-]|[.\s]$/.test(name)) return 'it begins with a dot, a hyphen or a space, or ends with a dot or a space';
	if (deviceName.test(name)) return 'it means a device on some systems';
	// A file's name holds 255 bytes; the hidden files beside it need some of them.
	if (Buffer.byteLength(name) > 180) return 'it is longer than 180 bytes';
	return null;
}

/** Where named sheets live. `XDG_DATA_HOME` goes first everywhere; a relative one is ignored, as its standard asks. */
export function dataFolder(env: Env, platform = process.platform): string {
	return folder(env, platform, {
		chosen: env.XDG_DATA_HOME,
		mac: ['Library', 'Application Support'],
		windows: [env.LOCALAPPDATA, 'AppData', 'Local'],
		other: ['.local', 'share'],
	});
}

/** Where the preferences live. */
export function configFolder(env: Env, platform = process.platform): string {
	return folder(env, platform, {
		chosen: env.XDG_CONFIG_HOME,
		mac: ['Library', 'Preferences'],
		windows: [env.APPDATA, 'AppData', 'Roaming'],
		other: ['.config'],
	});
}

/** Where what can be made anew is cached. */
export function cacheFolder(env: Env, platform = process.platform): string {
	return folder(env, platform, {
		chosen: env.XDG_CACHE_HOME,
		mac: ['Library', 'Caches'],
		windows: [env.LOCALAPPDATA, 'AppData', 'Local'],
		other: ['.cache'],
	});
}

interface Convention {
	chosen: string | undefined;
	mac: string[];
	windows: [set: string | undefined, ...usual: string[]];
	other: string[];
}

function folder(env: Env, platform: NodeJS.Platform, { chosen, mac, windows, other }: Convention): string {
	const home = homeFolder(env, platform);
	const [set, ...usual] = windows;
	if (chosen && isAbsolute(chosen)) return join(chosen, 'swap-audit');
	if (platform === 'darwin') return join(home, ...mac, 'swap-audit');
	if (platform === 'win32') return join(set || join(home, ...usual), 'swap-audit');
	return join(home, ...other, 'swap-audit');
}

/** The home folder that the environment names; where it names none, or one that depends on the folder one is in, that of the account. */
export function homeFolder(env: Env, platform = process.platform): string {
	const named = platform === 'win32' ? env.USERPROFILE : env.HOME;
	return named && (platform === 'win32' ? win32 : posix).isAbsolute(named) ? named : userInfo().homedir;
}
