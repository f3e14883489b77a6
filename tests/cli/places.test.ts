import {
	chmodSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	readlinkSync,
	statSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeSheet } from '../../src/sheet/write.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';

const text = (name = 'mule') => writeSheet({ ...buildSheet('unboosted'), name });
const quick = ['--draws', '0', '--date', '2026-05-01'];

/** Every file and folder under a folder, by its path in it. */
const everything = (folder: string): string[] => (readdirSync(folder, { recursive: true }) as string[]).sort();

function sheetIn(folder: string, content = text()): string {
	const path = join(folder, 'mule.json');
	writeFileSync(path, content);
	return path;
}

describe('named sheets', () => {
	test('live in the data folder, which is made for the person alone', () => {
		const home = temporaryFolder();
		expect(runCommand(['interview', 'mule', '--plain'], { home }).status).toBe(130);
		expect(everything(home)).toEqual(['swap-audit', 'swap-audit/.mule.json.last-good', 'swap-audit/mule.json']);
		expect(statSync(join(home, 'swap-audit')).mode & 0o777).toBe(0o700);
		expect(runCommand(['audit', 'mule', ...quick], { home }).status).toBe(0);
	});

	test('live below HOME when the data folder that is set is not absolute', () => {
		const home = temporaryFolder();
		runCommand(['interview', 'mule', '--plain'], { home, env: { XDG_DATA_HOME: 'data' } });
		expect(everything(home)).toContain('.local/share/swap-audit/mule.json');
	});

	test.each(['..', 'a/../../mule', 'mule\n', 'm'.repeat(300)])('%j makes no file outside of the data folder', name => {
		const home = temporaryFolder();
		mkdirSync(join(home, 'data'));
		const { status } = runCommand(['audit', name, '--record'], { home: join(home, 'data') });
		expect(status).toBe(2);
		expect(everything(home)).toEqual(['data']);
	});
});

test('the mode of a sheet is kept when it is saved, and its copy has the same', () => {
	for (const mode of [0o600, 0o664]) {
		const folder = temporaryFolder();
		const path = sheetIn(folder);
		chmodSync(path, mode);
		expect(runCommand(['audit', path, '--record', ...quick]).status).toBe(0);
		expect(JSON.parse(readFileSync(path, 'utf8')).audits).toHaveLength(1);
		for (const name of ['mule.json', '.mule.json.last-good'])
			expect(statSync(join(folder, name)).mode & 0o777, name).toBe(mode);
	}
});

describe('links', () => {
	test('a link to a sheet stays one; the sheet it leads to is saved', () => {
		const [checkout, folder] = [temporaryFolder(), temporaryFolder()];
		const path = sheetIn(checkout);
		symlinkSync(path, join(folder, 'mule.json'));
		expect(runCommand(['audit', join(folder, 'mule.json'), '--record', ...quick]).status).toBe(0);
		expect(readlinkSync(join(folder, 'mule.json'))).toBe(path);
		expect(JSON.parse(readFileSync(path, 'utf8')).audits).toHaveLength(1);
		expect(everything(folder)).toEqual(['mule.json']);
	});

	test('a link to a link is not written through', () => {
		const folder = temporaryFolder();
		const path = sheetIn(folder);
		symlinkSync('mule.json', join(folder, 'one.json'));
		symlinkSync('one.json', join(folder, 'two.json'));
		const { status, err } = runCommand(['audit', join(folder, 'two.json'), '--record', ...quick]);
		expect(err).toContain('a link that a link points to');
		expect(status).toBe(2);
		expect(readFileSync(path, 'utf8')).toBe(text());
	});
});

describe('no text of a sheet or of a pack leads a write anywhere', () => {
	const names = ['../../escaped', '/tmp/escaped', 'C:\\escaped', '~/$HOME\u0000'];

	test.each(names)('a sheet named %j writes where --out says, and nowhere else', name => {
		const home = temporaryFolder();
		const [sheets, out] = [join(home, 'sheets'), join(home, 'out')];
		mkdirSync(sheets);
		mkdirSync(out);
		const path = sheetIn(sheets, text(name));
		expect(runCommand(['audit', path, '--out', join(out, 'a.md'), ...quick], { home }).status).toBe(0);
		expect(everything(sheets)).toEqual(['.mule.json.last-good', 'mule.json']);
		expect(everything(out).every(file => /^a(?:-[a-z-]+\.svg|(?:-details)?\.md)$/.test(file))).toBe(true);
		expect(readdirSync(home).sort()).toEqual(['out', 'sheets']);
		expect(JSON.parse(readFileSync(path, 'utf8')).name).toBe(name);
	});

	test('a pack with paths in its words is read, or refused, and makes no file', () => {
		const folder = temporaryFolder();
		const path = sheetIn(folder);
		mkdirSync(join(folder, 'pack'));
		const pack = readFileSync('demo/packs/invented-family.yaml', 'utf8');
		writeFileSync(join(folder, 'pack', 'a.yaml'), pack.replace(/^(pack|name): .*$/m, '$1: ../../escaped'));
		const before = everything(folder);
		expect([0, 2]).toContain(runCommand(['audit', path, '--rules', join(folder, 'pack'), ...quick]).status);
		expect(everything(folder)).toEqual(before);
	});
});

describe('--out', () => {
	test('never writes over a sheet, by whatever name it is given', () => {
		const folder = temporaryFolder();
		const path = sheetIn(folder);
		writeFileSync(join(folder, 'other.json'), text('other'));
		symlinkSync('mule.json', join(folder, 'audit.md'));
		for (const out of ['mule.json', 'other.json', 'audit.md', '../'.concat(basename(folder), '/mule.json')]) {
			const { status, err } = runCommand(['audit', path, '--out', join(folder, out), '--no-record', ...quick]);
			expect(err).toContain('which is a sheet; accepted: the name of another file');
			expect(status).toBe(2);
		}
		expect(everything(folder)).toEqual(['audit.md', 'mule.json', 'other.json']);
		expect(readFileSync(path, 'utf8')).toBe(text());
		expect(readFileSync(join(folder, 'other.json'), 'utf8')).toBe(text('other'));
	});

	test('replaces an audit that is there, and keeps its mode', () => {
		const folder = temporaryFolder();
		const path = sheetIn(folder);
		const out = join(folder, 'a.json');
		writeFileSync(out, 'an old one');
		chmodSync(out, 0o600);
		expect(runCommand(['audit', path, '--out', out, '--no-record', ...quick]).status).toBe(0);
		expect(JSON.parse(readFileSync(out, 'utf8')).sheet).toBe('mule');
		expect(statSync(out).mode & 0o777).toBe(0o600);
		expect(readFileSync(path, 'utf8')).toBe(text());
	});

	test.each([['no-such-folder/a.md'], ['a-folder.md'], ['a.txt'], ['a']])(
		'%s is refused, and nothing is recorded',
		out => {
			const folder = temporaryFolder();
			const path = sheetIn(folder);
			mkdirSync(join(folder, 'a-folder.md'));
			const { status, out: data } = runCommand(['audit', path, '--out', join(folder, out), ...quick]);
			expect([status, data]).toEqual([2, '']);
			expect(everything(folder)).toEqual(['a-folder.md', 'mule.json']);
			expect(readFileSync(path, 'utf8')).toBe(text());
		},
	);
});
