import { expect, test } from 'vitest';
import type { FileSystem } from '../../src/files/file-system.ts';
import { writeOutput } from '../../src/files/output.ts';
import { readWhole } from '../../src/files/read.ts';
import { saveWhole } from '../../src/files/save.ts';
import { afterPowerCut, type Contents, fragileFolder } from '../support/fragile.ts';

const sheet = '/mule.json';
const old = 'old '.repeat(700);
const young = 'new '.repeat(700);

/** Does the work, then looks at every state the disk may be in when the power goes at any moment of it, or right after it. */
function cutAnywhere(
	begin: Record<string, string>,
	work: (on: FileSystem) => void,
	worn: (on: FileSystem) => FileSystem = on => on,
) {
	const { on, changes } = fragileFolder(begin);
	const first = changes.length;
	work(worn(on));
	const during: Contents[] = [];
	for (let end = first; end < changes.length; end++) during.push(...afterPowerCut(changes.slice(0, end)));
	return { during, after: [...afterPowerCut(changes)] };
}

const found = (states: Contents[], path = sheet) =>
	new Set(states.map(state => state.get(path)?.toString() ?? 'nothing'));
const replace = (on: FileSystem) => void saveWhole(sheet, young, readWhole(sheet, undefined, on).mark, on);

test('a power cut leaves the old sheet or the new one, and the new one once the save has ended', () => {
	const { during, after } = cutAnywhere({ [sheet]: old }, replace);
	expect(during.length + after.length).toBeGreaterThan(200);
	expect(found(during)).toEqual(new Set([old, young]));
	expect(found(after)).toEqual(new Set([young]));
});

test('a power cut in the first save leaves no sheet or a whole one', () => {
	const { during, after } = cutAnywhere({}, on => void saveWhole(sheet, young, null, on));
	expect(found(during)).toEqual(new Set(['nothing', young]));
	expect(found(after)).toEqual(new Set([young]));
});

test('a power cut over an edit by hand leaves that edit, and your version whole once the save has ended', () => {
	const { during, after } = cutAnywhere({ [sheet]: old }, on => void saveWhole(sheet, young, null, on));
	expect(found([...during, ...after])).toEqual(new Set([old]));
	expect(found(after, '/mule.yours-1.json')).toEqual(new Set([young]));
});

test('a power cut leaves the old audit or the new one, and never a new audit without its picture', () => {
	const picture = '/limits.svg';
	const begin = { '/audit.md': old, [picture]: 'old picture' };
	const write = (on: FileSystem) => writeOutput('/audit.md', young, { 'limits.svg': 'new picture' }, on);
	const { during, after } = cutAnywhere(begin, write);
	expect(found(during, '/audit.md')).toEqual(new Set([old, young]));
	expect(found(during, picture)).toEqual(new Set(['old picture', 'new picture']));
	const ahead = [...during, ...after].filter(state => state.get('/audit.md')?.toString() === young);
	expect(found(ahead, picture)).toEqual(new Set(['new picture']));
});

test('the cut would show a save that does not flush the file', () => {
	const { during, after } = cutAnywhere({ [sheet]: old }, replace, on => ({ ...on, flush() {} }));
	expect(found([...during, ...after])).toContain('');
});

test('the cut would show a save that does not flush the folder', () => {
	const { after } = cutAnywhere({ [sheet]: old }, replace, on => ({ ...on, flushFolder() {} }));
	expect(found(after)).toContain(old);
});
