import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { keepPreferences, readPreferences } from '../../src/files/preferences.ts';
import { temporaryFolder } from '../support/folder.ts';

const nothing = { units: null, recent: [] };

function home(content?: string) {
	const env = { XDG_CONFIG_HOME: temporaryFolder() };
	const folder = join(env.XDG_CONFIG_HOME, 'swap-audit');
	const path = join(folder, 'preferences.json');
	if (content !== undefined) {
		mkdirSync(folder);
		writeFileSync(path, content);
	}
	return { env, folder, path };
}

test('reading makes nothing', async () => {
	const { env, folder } = home();
	expect(await readPreferences(env)).toEqual(nothing);
	expect(existsSync(folder)).toBe(false);
});

test('what is kept comes back, and the rest stays as it was', async () => {
	const { env, path } = home();
	expect(await keepPreferences(env, { units: 'metric', recent: ['/a.json', '/b.json'] })).toBe(true);
	expect(await keepPreferences(env, { units: 'us' })).toBe(true);
	expect(await readPreferences(env)).toEqual({ units: 'us', recent: ['/a.json', '/b.json'] });
	expect(statSync(path).mode & 0o077).toBe(0);
});

test('ten recent sheets are kept, each once', async () => {
	const { env } = home();
	const paths = Array.from({ length: 15 }, (_, i) => `/${i}.json`);
	await keepPreferences(env, { recent: ['/3.json', ...paths] });
	const { recent } = await readPreferences(env);
	expect(recent).toEqual(['/3.json', '/0.json', '/1.json', '/2.json', ...paths.slice(4, 10)]);
});

test.each(['', '{', '[]', '7', 'null', '"text"', '{"units": "furlongs", "recent": {"0": 1}}', '\0\0'])(
	'a file that holds %j counts as nothing, and is written anew',
	async content => {
		const { env } = home(content);
		expect(await readPreferences(env)).toEqual(nothing);
		expect(await keepPreferences(env, { units: 'us' })).toBe(true);
		expect(await readPreferences(env)).toEqual({ ...nothing, units: 'us' });
	},
);

test('nothing but these two is kept', async () => {
	const { env, path } = home('{"units": "us", "secret": 1}');
	await keepPreferences(env, { recent: ['/a.json'] });
	expect(Object.keys(JSON.parse(readFileSync(path, 'utf8'))).sort()).toEqual(['recent', 'units']);
});

test('preferences that cannot be read or kept do not stop the program', async () => {
	const { env, folder, path } = home();
	mkdirSync(path, { recursive: true });
	expect(await readPreferences(env)).toEqual(nothing);
	expect(await keepPreferences(env, { units: 'us' })).toBe(false);
	const blocked = { XDG_CONFIG_HOME: join(folder, 'file') };
	writeFileSync(blocked.XDG_CONFIG_HOME, '');
	expect(await keepPreferences(blocked, { units: 'us' })).toBe(false);
});
