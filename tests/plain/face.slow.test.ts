import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { recordOf } from '../../src/audit/record.ts';
import { withAnswer } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { audited } from '../support/audited.ts';
import { command, runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';
import { Person } from '../terminal/person.ts';

const sheetIn = (home: string) => join(home, 'mule.json');
const answers = (path: string) => JSON.parse(readFileSync(path, 'utf8')).answers;

/** Runs the line face on a new sheet with these lines. */
function lines(input: readonly string[], args: readonly string[] = ['--quick']) {
	const home = temporaryFolder();
	return {
		...runCommand(['interview', sheetIn(home), '--plain', ...args], { input: `${input.join('\n')}\n`, home }),
		home,
	};
}

test('a whole quick pass on a pipe: every question asked once by its id, the audit written, status 0', () => {
	const person = new Person('mule', 'boosted');
	const typed: string[] = [];
	for (let keys = person.keys(); keys !== null; keys = person.keys())
		typed.push(keys === '\u000e' ? '-' : keys.trimEnd());
	const { status, out, err, home } = lines(typed);
	expect(err).toBe('');
	expect(status).toBe(0);
	const asked = out.split('\n').flatMap(line => /^\[([a-z]+\.[a-z0-9_]+)\]/.exec(line)?.[1] ?? []);
	expect(asked.length).toBe(typed.length);
	expect(new Set(asked).size).toBe(asked.length);
	expect(readFileSync(join(home, 'mule.audit.md'), 'utf8')).toContain('# Swap audit: mule');
	expect(out).not.toMatch(/\u001b/);
});

describe('a line', () => {
	test('is echoed as it was read; what cannot be read is said and asked again', () => {
		const { out } = lines(['1', '1', '2', 'ten pounds', '10 psi measured']);
		expect(out).toMatch(/ten pounds/);
		expect(out.match(/^\[boost\.target\]/gm)?.length).toBe(2);
		expect(out).toContain('Read as 10 psi, 0.689 bar, measured.');
	});

	test('? shows how to find out, - is not known, < goes back, > puts off, # notes', () => {
		const { out, home } = lines(['?', '-', '1', '<', '# looked twice', '2', '>']);
		expect(out.match(/^\[build\.stage\]/gm)!.length).toBeGreaterThanOrEqual(2);
		expect(answers(sheetIn(home)).build).toMatchObject({
			stage: { known: 'not-known' },
			use: { value: 'street-and-strip', note: 'looked twice' },
		});
	});

	test('the words help, back, later and not known are taken as their signs', () => {
		const { out, home } = lines(['help', 'not known', '1', 'back', '2', 'later', 'audit']);
		expect(out).toContain('An answer is a line.');
		expect(answers(sheetIn(home)).build).toMatchObject({
			stage: { known: 'not-known' },
			use: { value: 'street-and-strip' },
		});
	});

	test('a refusal is one line, and only the id again, not the whole question', () => {
		const { out } = lines(['moon']);
		expect(out.match(/How far along is the build/g)?.length).toBe(1);
		expect(out.match(/^\[build\.stage\]/gm)?.length).toBe(2);
	});

	test('--units says in which units a new sheet is asked', () => {
		const { home, out } = lines(['-', '-', '-', '-', '96'], ['--section', 'engine', '--units', 'metric']);
		expect(out).toContain('a number (mm)');
		expect(JSON.parse(readFileSync(sheetIn(home), 'utf8')).units).toBe('metric');
	});

	test('! writes the audit at once', () => {
		const { status, home } = lines(['1', '!']);
		expect(status).toBe(0);
		expect(existsSync(join(home, 'mule.audit.md'))).toBe(true);
	});
});

test('the end of input saves what was answered, and says so by its status', () => {
	const { status, home } = lines(['1', '2']);
	expect(status).toBe(130);
	expect(Object.keys(answers(sheetIn(home)).build)).toEqual(['stage', 'use']);
});

test('going on starts at the first open question', () => {
	const { home } = lines(['1', '2']);
	const { out } = runCommand(['interview', sheetIn(home), '--plain', '--quick'], { input: '-\n', home });
	expect(out).toContain('Going on, 2 answered.');
	expect(out).not.toContain('[build.stage]');
});

test('a new sheet is in the units of the preferences, if --units does not say otherwise', () => {
	const home = temporaryFolder();
	mkdirSync(join(home, 'swap-audit'));
	writeFileSync(join(home, 'swap-audit/preferences.json'), '{"units": "metric"}');
	const unitsOf = (name: string, ...args: string[]) => {
		runCommand(['interview', join(home, name), '--plain', ...args], { input: '-\n', home });
		return JSON.parse(readFileSync(join(home, name), 'utf8')).units;
	};
	expect(unitsOf('usual.json')).toBe('metric');
	expect(unitsOf('said.json', '--units', 'us')).toBe('us');
});

test('a comma that reads two ways is answered by its letter', () => {
	const { out, home } = lines(['-', '-', '-', '-', '3,780 in', 'b'], ['--section', 'engine']);
	expect(out.replace(/\s+/g, ' ')).toContain('a) 3780 in, which does not fit; b) 3.78 in, 96.01 mm');
	expect(answers(sheetIn(home)).engine.bore).toEqual({ value: 3.78, unit: 'in' });
});

test('one section alone is asked when it is named', () => {
	const { out } = lines(['-', '-'], ['--section', 'cooling']);
	expect(out.match(/^\[[a-z]+\./gm)!.every(line => line === '[cooling.')).toBe(true);
});

test.each([
	['SIGHUP', 129],
	['SIGINT', 130],
	['SIGTERM', 143],
] as const)('%s ends it with status %i, the answers saved', async (signal, wanted) => {
	const home = temporaryFolder();
	const child = spawn(process.execPath, [command, 'interview', sheetIn(home), '--plain', '--quick'], {
		env: { PATH: process.env.PATH ?? '', HOME: home, XDG_DATA_HOME: home, XDG_CONFIG_HOME: home },
	});
	const person = new Person('mule', 'boosted');
	child.stdin.write(`${person.keys()!.trimEnd()}\n`);
	await expect
		.poll(() => existsSync(sheetIn(home)) && Object.keys(answers(sheetIn(home))).length, { timeout: 8000 })
		.toBe(1);
	child.kill(signal);
	const [status] = await once(child, 'close');
	expect(status).toBe(wanted);
	expect(Object.keys(answers(sheetIn(home)))).toEqual(['build']);
});

describe('a sheet that was audited before', () => {
	/** The boosted build with a hose that is wrong, audited; and the lines typed at it. */
	function recheck(input: readonly string[]) {
		const home = temporaryFolder();
		const wrong = withAnswer(buildSheet('boosted'), 'fuel.hose', { value: 'carburettor-rated' });
		writeFileSync(sheetIn(home), writeSheet({ ...wrong, audits: [recordOf(audited(wrong))] }));
		const text = input.map(line => `${line}\n`).join('');
		return { ...runCommand(['interview', sheetIn(home), '--plain', '--quick'], { input: text, home }), home };
	}

	test('asks what was touched, asks only that, and shows what changed', () => {
		const { out, status, home } = recheck(['chimney', 'fuel.hose', 'none', 'none', 'injection-rated', '!']);
		expect(out).toContain('[recheck] What did you touch since the audit of 2026-05-01?');
		expect(out).toContain('"chimney" is no section and no answer.');
		expect(out).toContain('[build.checked_before_fire]');
		expect(out).not.toContain('[engine.bore]');
		expect(out).toMatch(/Since 2026-05-01: settled 1/);
		expect(out).toMatch(/Settled: .*hose/i);
		expect(status).toBe(0);
		expect(readFileSync(join(home, 'mule.audit.md'), 'utf8')).toContain('## Since last time');
	});

	test('no line at all is nothing touched', () => {
		const { status, out } = recheck([]);
		expect(status).toBe(0);
		expect(out).toContain('The audit is in');
	});
});

test('when nobody reads on, it ends as interrupted, with the answers so far saved', async () => {
	const home = temporaryFolder();
	const person = new Person('mule', 'boosted');
	const typed: string[] = [];
	for (let keys = person.keys(); keys !== null; keys = person.keys())
		typed.push(keys === '\u000e' ? '-' : keys.trimEnd());
	writeFileSync(join(home, 'lines'), typed.join('\n'));
	const { stdout } = spawnSync(
		'bash',
		[
			'-c',
			`"$0" "$1" interview ${sheetIn(home)} --plain --quick < ${home}/lines | head -1; echo "\${PIPESTATUS[0]}"`,
			process.execPath,
			command,
		],
		{ encoding: 'utf8', env: { PATH: process.env.PATH ?? '', HOME: home, XDG_DATA_HOME: home, XDG_CONFIG_HOME: home } },
	);
	expect(stdout.trim().split('\n').at(-1)).toBe('130');
});
