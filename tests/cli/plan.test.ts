import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { accesses } from '../../src/sheet/access.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { brokenBuild } from '../support/audited.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';

const text = writeSheet(brokenBuild());
const day = ['--date', '2026-05-01'];
const planOf = (...flags: readonly string[]) => runCommand(['plan', '-', ...day, ...flags], { input: text });

interface PlannedEvening {
	readonly access: string;
	readonly minutes: number;
	readonly parts: readonly string[];
	readonly lines: readonly { readonly rule?: string; readonly answer?: string; readonly minutes: number }[];
}
const eveningsOf = (out: string): PlannedEvening[] => JSON.parse(out).evenings;
const idsOf = (out: string) => eveningsOf(out).flatMap(({ lines }) => lines.map(({ rule, answer }) => rule ?? answer));

describe('plan', () => {
	const whole = planOf('--json');

	test('as JSON: its format, and each evening with what another program needs', () => {
		expect(whole.status).toBe(0);
		const json = JSON.parse(whole.out);
		expect(Object.keys(json)).toEqual(['format', 'version', 'sheet', 'date', 'stage', 'evenings']);
		expect(json).toMatchObject({ format: 'swap-audit/plan', version: 1, sheet: 'word mule', date: '2026-05-01' });
		expect(eveningsOf(whole.out).length).toBeGreaterThan(0);
		for (const evening of eveningsOf(whole.out)) {
			expect(Object.keys(evening)).toEqual(['access', 'minutes', 'parts', 'lines']);
			expect(accesses).toContain(evening.access);
			for (const line of evening.lines)
				expect(Object.keys(line)).toEqual([line.rule ? 'rule' : 'answer', 'subject', 'minutes', 'needs']);
		}
		expect(idsOf(whole.out)).toContain('fuel.hose-not-for-injection');
	});

	test('with less time: the same lines in more evenings', () => {
		const short = planOf('--json', '--minutes', '30');
		expect(idsOf(short.out).sort()).toEqual(idsOf(whole.out).sort());
		expect(eveningsOf(short.out).length).toBeGreaterThanOrEqual(eveningsOf(whole.out).length);
		for (const { lines, minutes } of eveningsOf(short.out))
			if (lines.length > 1) expect(minutes).toBeLessThanOrEqual(30);
	});

	test('of one place, with parts at hand: those are not listed, and a name that is none is said', () => {
		const folder = temporaryFolder();
		const have = join(folder, 'have.txt');
		writeFileSync(have, '# shelf\nFuel-injection hose 30R9 or better\n2 left-handed wrenches\n');
		const { out, err } = planOf('--json', '--access', 'rail', '--have', have);
		expect(err).toContain('--have: no line asks for a part called "2 left-handed wrenches"');
		for (const { access, parts } of eveningsOf(out)) {
			expect(access).toBe('rail');
			expect(parts).not.toContain('fuel-injection hose 30R9 or better');
		}
		expect(eveningsOf(whole.out).flatMap(({ parts }) => parts)).toContain('fuel-injection hose 30R9 or better');
	});

	test('to a file, by its ending; the sheet stays as it is', () => {
		const folder = temporaryFolder();
		const sheet = join(folder, 'mule.json');
		writeFileSync(sheet, text);
		for (const ending of ['md', 'html'])
			expect(runCommand(['plan', sheet, ...day, '--out', join(folder, `plan.${ending}`)]).out).toBe('');
		const written = readFileSync(join(folder, 'plan.md'), 'utf8');
		expect(written).toMatch(/^# Evenings: word mule\n/);
		expect(written).toMatch(/^- \[ \] /m);
		const [list, full] = written.split('\n## Cautions\n') as [string, string];
		const named = [...list.replace(/\s+/g, ' ').matchAll(/\*\*Caution:\*\* (.*?)\.(?= |$)/g)];
		expect(named.length).toBeGreaterThan(0);
		for (const title of named.flatMap(([, titles]) => titles!.split('; '))) expect(full).toContain(`**${title}.**`);
		expect(readFileSync(join(folder, 'plan.html'), 'utf8')).toMatch(/^<!doctype html>/);
		expect(runCommand(['plan', sheet, '--out', sheet]).status).toBe(2);
		expect(readFileSync(sheet, 'utf8')).toBe(text);
	});

	test('to read, what serves every line is got once, before the first evening that needs it', () => {
		const { out } = planOf('--minutes', '30');
		const asked = [...out.replace(/\n(?!\n)/g, ' ').matchAll(/\*\*Get first:\*\* (.*?)\.\n/g)].flatMap(([, parts]) =>
			parts!.split('; '),
		);
		expect(asked).toContain('fuel-injection hose 30R9 or better');
		expect(new Set(asked).size).toBe(asked.length);
	});

	test('--day prints that procedure alone, with its cautions', () => {
		const { out } = planOf('--day', 'fire');
		expect(out).toMatch(/^# The day itself: word mule\n/);
		expect([...out.matchAll(/^###? (.*)$/gm)].map(([, title]) => title)).toEqual(['First fire', 'Cautions']);
		expect(out).toMatch(/^1\. /m);
	});

	test.each([
		[['--minutes', '5'], /--minutes: found "5"; accepted: a whole number, 10 to 1440/],
		[['--minutes', 'all'], /--minutes: found "all"/],
		[['--access', 'roof'], /roof.*bench, bay, under/],
		[['--day', 'sunday'], /sunday/],
		[['--day', 'fire', '--json'], /plan --day prints a procedure to read: no JSON/],
		[['--out', 'plan.docx'], /--out: found "plan.docx"; accepted: a file ending in .md, .html, .json/],
		[['--have', 'no-such.txt'], /no-such.txt: there is no such file/],
	])('%j ends with 2 and one clear line', (flags, message) => {
		const { status, out, err } = planOf(...flags);
		expect(err).toMatch(message);
		expect(out).toBe('');
		expect(status).toBe(2);
	});
});
