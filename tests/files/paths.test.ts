import { userInfo } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { configFolder, dataFolder, locateSheet } from '../../src/files/paths.ts';
import { FileProblem } from '../../src/files/problem.ts';

const env = { HOME: '/home/pat', XDG_DATA_HOME: '/data' };
const at = (sheet: string) => locateSheet(sheet, env, '/garage', 'linux');

test('a hyphen is standard input', () => {
	expect(at('-')).toEqual({ kind: 'stdin' });
});

test.each([
	['mule.json', '/garage/mule.json'],
	['./mule', '/garage/mule'],
	['builds/mule', '/garage/builds/mule'],
	['/x/mule.json', '/x/mule.json'],
	['../mule.json', '/mule.json'],
])('%s has a slash or ends in .json, so it is a path', (sheet, path) => {
	expect(at(sheet)).toEqual({ kind: 'path', path });
});

test.each(['mule', 'Shop mule 2', 'mule.v2', 'Käfer', 'mule.JSON'])('%s is a name in the data folder', name => {
	expect(at(name)).toEqual({ kind: 'name', path: `/data/swap-audit/${name}.json` });
});

test('a name is the same file however its letters are put together', () => {
	expect(at('Ka\u0308fer')).toEqual(at('K\u00e4fer'));
});

test.each([
	['..', 'begins with a dot'],
	['.hidden', 'begins with a dot'],
	['', 'empty'],
	['   ', 'empty'],
	['-mule', 'hyphen'],
	['mule.', 'ends with a dot'],
	['..\\mule', 'has \\ in it'],
	['C:mule', 'has : in it'],
	['mu\0le', 'control character'],
	['mu\nle', 'control character'],
	['mu\u001b[2Jle', 'control character'],
	['mu\u202ele', 'control character'],
	['nul', 'device'],
	['Con.old', 'device'],
	['m'.repeat(181), 'longer'],
	['ä'.repeat(91), 'longer'],
])('%j is refused as a name: %s', (name, why) => {
	expect(() => at(name)).toThrow(FileProblem);
	expect(() => at(name)).toThrow(why);
});

test('what a refusal prints cannot steer the terminal', () => {
	expect(() => at('mu\u001b[2Jle')).toThrow(/^mu\\u\{1b\}\[2Jle: /);
});

test('a path to a folder, or with a zero character, is refused', () => {
	expect(() => at('builds/')).toThrow('names a folder');
	expect(() => at('builds/\0.json')).toThrow('zero character');
});

test('the folders follow the custom of each system', () => {
	const home = { HOME: '/h', USERPROFILE: '/h' };
	expect(dataFolder(home, 'linux')).toBe('/h/.local/share/swap-audit');
	expect(configFolder(home, 'linux')).toBe('/h/.config/swap-audit');
	expect(dataFolder(home, 'darwin')).toBe('/h/Library/Application Support/swap-audit');
	expect(configFolder(home, 'darwin')).toBe('/h/Library/Preferences/swap-audit');
	expect(dataFolder(home, 'win32')).toBe('/h/AppData/Local/swap-audit');
	expect(dataFolder({ ...home, LOCALAPPDATA: '/l' }, 'win32')).toBe('/l/swap-audit');
	expect(configFolder({ ...home, APPDATA: '/r' }, 'win32')).toBe('/r/swap-audit');
});

test('a home that depends on the folder one is in is passed over for that of the account', () => {
	for (const home of ['here', './here', ''])
		expect(dataFolder({ HOME: home }, 'linux')).toBe(join(userInfo().homedir, '.local/share/swap-audit'));
});

test('XDG_DATA_HOME goes first, and counts only when it is absolute', () => {
	expect(dataFolder({ HOME: '/h', XDG_DATA_HOME: '/data' }, 'darwin')).toBe('/data/swap-audit');
	expect(dataFolder({ HOME: '/h', XDG_DATA_HOME: 'data' }, 'linux')).toBe('/h/.local/share/swap-audit');
	expect(dataFolder({ HOME: '/h', XDG_DATA_HOME: '' }, 'linux')).toBe('/h/.local/share/swap-audit');
});
