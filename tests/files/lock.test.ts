import { existsSync, readFileSync, unlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fileSystem } from '../../src/files/file-system.ts';
import { withLock } from '../../src/files/lock.ts';
import { quickClock } from '../support/clock.ts';
import { watched } from '../support/faulty.ts';
import { temporaryFolder } from '../support/folder.ts';

function setUp(holder?: object | string) {
	const folder = temporaryFolder();
	const path = join(folder, 'mule.json');
	const lock = join(folder, '.mule.json.lock');
	if (holder !== undefined) writeFileSync(lock, typeof holder === 'string' ? holder : JSON.stringify(holder));
	return { path, lock, ...quickClock() };
}
/** Process 1 always runs. */
const living = { token: 'theirs', pid: 1, host: fileSystem.host, since: Date.now() };
const done = () => 'done';

test('the lock is there during the work, names its holder, and is gone after it, also when the work fails', () => {
	const { path, lock, on } = setUp();
	const held = withLock(path, on, () => JSON.parse(readFileSync(lock, 'utf8')));
	expect(held).toMatchObject({ pid: process.pid, host: fileSystem.host });
	expect(existsSync(lock)).toBe(false);
	const fail = () => {
		throw new Error('the work failed');
	};
	expect(() => withLock(path, on, fail)).toThrow('the work failed');
	expect(existsSync(lock)).toBe(false);
});

test('a running holder is waited for, for two seconds, and then named', () => {
	const { path, lock, on, waited } = setUp(living);
	expect(() => withLock(path, on, done)).toThrow(`process 1 on ${fileSystem.host} has been saving it since 20`);
	expect(() => withLock(path, on, done)).toThrow(`delete ${lock} first`);
	expect(waited()).toBe(2 * 2000);
	expect(readFileSync(lock, 'utf8')).toContain('theirs');
});

test('the work begins as soon as a running holder lets go', () => {
	const { path, lock, on, waited } = setUp(living);
	const pause = (ms: number) => {
		on.pause(ms);
		if (waited() === 50) unlinkSync(lock);
	};
	expect(withLock(path, { ...on, pause }, done)).toBe('done');
	expect(waited()).toBe(50);
});

test.each([
	['a dead process', { ...living, pid: 999_999_999 }],
	['an earlier process with our number', { ...living, pid: process.pid }],
	['a minute ago, its number being given to another program since', { ...living, since: Date.now() - 61_000 }],
	['another computer a minute ago', { ...living, pid: 999_999_999, host: 'other', since: Date.now() - 61_000 }],
])('a lock of %s is taken over at once', (_, holder) => {
	const { path, lock, on, waited } = setUp(holder);
	expect(withLock(path, on, done)).toBe('done');
	expect(waited()).toBe(0);
	expect(existsSync(lock)).toBe(false);
	expect(existsSync(`${lock}~`)).toBe(false);
});

test('a lock of another computer is not judged by the processes of this one', () => {
	const { path, on } = setUp({ ...living, pid: 999_999_999, host: 'other' });
	expect(() => withLock(path, on, done)).toThrow('process 999999999 on other');
});

test.each(['', '{"pid"', '[]', '{"token": 1}', '\0\0\0'])(
	'a lock that says %j is given a second to say whose it is',
	text => {
		const { path, lock, on, waited } = setUp(text);
		utimesSync(lock, new Date(), new Date());
		expect(withLock(path, on, done)).toBe('done');
		expect(waited()).toBeGreaterThan(500);
		expect(waited()).toBeLessThan(1100);
	},
);

test('a lock that another program was quicker to take over is not taken away from it', () => {
	const { path, lock, on } = setUp({ ...living, pid: 999_999_999 });
	// While we go to remove the dead lock, another program has put its own there.
	const slow = watched((_, operation, [name, flags]) => {
		if (operation === 'open' && name === `${lock}~` && flags === 'wx') writeFileSync(lock, JSON.stringify(living));
	}, on);
	expect(() => withLock(path, slow, done)).toThrow('process 1 on');
	expect(readFileSync(lock, 'utf8')).toContain('theirs');
});

test('a program that died while it removed a dead lock is not in the way', () => {
	const { path, lock, on, waited } = setUp({ ...living, pid: 999_999_999 });
	writeFileSync(`${lock}~`, JSON.stringify({ ...living, pid: 999_999_998 }));
	expect(withLock(path, on, done)).toBe('done');
	expect(waited()).toBe(0);
});

test('a program whose lock was taken away learns it before its decisive step, and begins anew when it is its turn', () => {
	const { path, lock, on } = setUp();
	let begun = 0;
	let decided = 0;
	const slept = (stillMine: () => void) => {
		stillMine();
		if (++begun === 1) writeFileSync(lock, JSON.stringify({ ...living, pid: 999_999_999 }));
		stillMine();
		decided++;
	};
	withLock(path, on, slept);
	expect([begun, decided]).toEqual([2, 1]);
	expect(existsSync(lock)).toBe(false);
});

test('the other is left in peace, and what loses its lock each time ends with a problem', () => {
	const { path, lock, on } = setUp();
	let begun = 0;
	const sleepy = (stillMine: () => void) => {
		begun++;
		writeFileSync(lock, JSON.stringify({ ...living, pid: begun < 3 ? 999_999_999 : living.pid }));
		stillMine();
	};
	expect(() => withLock(path, on, sleepy)).toThrow(`process ${living.pid}`);
	expect(begun).toBe(3);
	expect(readFileSync(lock, 'utf8')).toContain('theirs');
	const always = (stillMine: () => void) => {
		begun++;
		writeFileSync(lock, JSON.stringify({ ...living, pid: 999_999_999 }));
		stillMine();
	};
	unlinkSync(lock);
	begun = 0;
	expect(() => withLock(path, on, always)).toThrow('another program took over');
	expect(begun).toBe(5);
});
