import { join } from 'node:path';
import { fileSystem } from './file-system.ts';
import { configFolder } from './paths.ts';

/** What is remembered of the person, and all that is; nothing a sheet needs. */
export interface Preferences {
	units: 'us' | 'metric' | null;
	/** Paths of sheets, the last used first, at most 10. */
	recent: string[];
}

const mostRecent = 10;
type Env = Record<string, string | undefined>;

/** Never fails: what is missing or broken counts as not set. */
export async function readPreferences(env: Env): Promise<Preferences> {
	try {
		// The library is slow to load, and makes the folder when it only reads.
		if (fileSystem.look(join(configFolder(env), 'preferences.json'), 'follow') === null) return known({});
		return known((await open(env)).store);
	} catch {
		return known({});
	}
}

/** Changes what is named and keeps the rest. False when it could not be kept, of which nobody needs to know. */
export async function keepPreferences(env: Env, change: Partial<Preferences>): Promise<boolean> {
	try {
		const store = await open(env);
		store.store = { ...known({ ...store.store, ...change }) };
		return true;
	} catch {
		return false;
	}
}

async function open(env: Env) {
	const { default: Conf } = await import('conf');
	return new Conf<Record<string, unknown>>({
		cwd: configFolder(env),
		configName: 'preferences',
		clearInvalidConfig: true,
		configFileMode: 0o600,
	});
}

/** What a file says, as far as it makes sense. */
function known({ units, recent }: Record<string, unknown>): Preferences {
	return {
		units: units === 'us' || units === 'metric' ? units : null,
		recent: Array.isArray(recent)
			? [...new Set(recent.filter(path => typeof path === 'string'))].slice(0, mostRecent)
			: [],
	};
}
