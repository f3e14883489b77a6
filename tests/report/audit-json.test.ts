import { expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import type { Audit } from '../../src/audit/audit.ts';
import { AuditPrinter } from '../../src/report/audit-json.ts';
import { printJson } from '../../src/report/json.ts';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { seed } from '../counts.ts';
import { audited, brokenBuild, changed, thirdOf } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { randomSheet } from '../support/random-sheet.ts';

test('audit after audit by one printer is byte for byte what each is as JSON by itself', () => {
	const model = testModel();
	const random = chance(seed);
	const hostile = brokenBuild('a\u001b[2J"\\\u202e\u2028\u009b31m\ud800é\n');
	const sheets = [
		buildSheet('boosted'),
		changed(buildSheet('boosted'), { 'boost.target': { value: 11, unit: 'psi', known: 'measured' } }),
		buildSheet('unboosted'),
		emptySheet(''),
		hostile,
		thirdOf(hostile),
		...Array.from({ length: 6 }, () => randomSheet(model.rulebook, model.graph, random)),
	];
	const printer = new AuditPrinter();
	for (const sheet of [...sheets, ...sheets]) {
		for (const units of ['us', 'metric'] as const) {
			// Straight to the judging: a random build need not pass the check of a sheet.
			const { audit } = assess(model, { sheet, warnings: [] }, { date: '2026-05-01', units, tool: '0.0.0', draws: 0 });
			expect(printer.print(audit).join('')).toBe(printJson(audit));
		}
	}
});

test('every sort of value is printed as JSON has it, whatever was in its place before', () => {
	const { audit } = audited(emptySheet('odd'));
	const [finding] = audit.findings;
	const printer = new AuditPrinter();
	const values = [-0, 1e21, 1e-7, Number.NaN, true, null, '"', [], [undefined, 'a'], {}, { a: undefined, b: [{}] }];
	for (const value of values) {
		const odd = { ...audit, findings: [{ ...finding!, numbers: { 'é"': value }, parts: [value] }] } as Audit;
		expect(printer.print(odd).join('')).toBe(printJson(odd));
	}
	expect(printer.print({ ...audit, findings: [] }).join('')).toBe(printJson({ ...audit, findings: [] }));
});
