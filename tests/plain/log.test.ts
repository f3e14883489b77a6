import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type LogFace, logByLines } from '../../src/plain/log.ts';
import { emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { runCommand } from '../support/command.ts';
import { driveTable } from '../support/drive-table.ts';
import { temporaryFolder } from '../support/folder.ts';
import { testModel } from '../support/model.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

test('a log is read by lines: its columns corrected, answers taken by number, the audit judged with it', () => {
	const home = temporaryFolder();
	const path = join(home, 'mule.json');
	// A sheet of little else gives nothing to fit, which would take seconds for the log and as many for the audit.
	writeFileSync(path, writeSheet(withAnswer(emptySheet('mule'), 'boost.kind', { value: 'turbocharger' })));
	const table = driveTable(simulateDrive({ rate: 10, pulls: 1, faults: { leanOnTop: 0.08 } }));
	writeFileSync(join(home, 'drive.csv'), table.replace('fuel pressure (Pa)', 'P7'));
	const { status, out, err } = runCommand(['interview', path, '--plain'], {
		input: [
			`log ${home}/nothing.csv`,
			`log ${home}/drive.csv`,
			'P7',
			'fuel_pressure=P7@furlong',
			'fuel_pressure=P7@Pa',
			'not lambda 2',
			'yes',
			'99',
			'all',
			'!',
			'',
		].join('\n'),
		home,
	});
	expect(err).toBe('');
	expect(status).toBe(0);
	expect(out).toContain('nothing.csv');
	expect(out).toMatch(/P7: not used/);
	expect(out).toMatch(/"P7" is none of these/);
	expect(out).toMatch(/the unit "furlong"/);
	expect(out).toMatch(/P7: fuel rail pressure, gauge \(fuel_pressure\), Pa/);
	expect(out).toMatch(/lambda 2: not used/);
	expect(out).toMatch(/! Lean under load, in the log \(pull 1\)/);
	expect(out).toMatch(/Numbers from 1 to \d+ are taken here/);
	const { logs, answers, audits } = JSON.parse(readFileSync(path, 'utf8'));
	expect(logs[0].channels).toContainEqual(
		expect.objectContaining({ channel: 'fuel_pressure', header: 'P7', by: 'given' }),
	);
	expect(answers.boost.logged_peak.note).toMatch(/from the log drive\.csv/);
	const lean = { rule: 'log.lean-under-load', subject: '1', verdict: 'fails' };
	expect(audits[0].verdicts).toContainEqual(expect.objectContaining(lean));
});

test('while the model is fitted one line says so, however often its share is given; what ends it is said', async () => {
	const said: string[] = [];
	const going: boolean[] = [];
	const face: LogFace = {
		isForPerson: (error): error is Error => error instanceof Error,
		lookAtLog: async () => ({ columns: [], notes: [] }),
		judgeLog: async (_sheet, _path, _columns, { fitted }) => {
			going.push(fitted(0.1), fitted(0.9));
			throw new Error('drive.csv: the disk is gone');
		},
	};
	const lines = { next: async () => 'yes', say: (text: string) => said.push(text), mark() {} };
	expect(await logByLines(testModel(), emptySheet('mule'), 'drive.csv', face, lines)).toBeNull();
	expect(going).toEqual([true, true]);
	expect(said.slice(-2)).toEqual(['Fitting the model to this car: some seconds.', 'drive.csv: the disk is gone']);
});
