import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { givenAnswers } from '../../src/quantities/from-sheet.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { testModel } from '../support/model.ts';

// Sheets as the program wrote them once, or as a hand did. They are never edited: whoever changes the sheet's format
// adds a file here and brings the old ones up to date in memory.

const folder = fileURLToPath(new URL('.', import.meta.url));
const { questions } = testModel().rulebook;
const open = (name: string) => checkSheet(parseSheet(readFileSync(`${folder}${name}`, 'utf8')), questions);

test.each(readdirSync(folder).filter(name => name.endsWith('.json')))('a sheet of %s opens for ever', name => {
	const { sheet } = open(name);
	expect(Object.keys(sheet.answers).length).toBeGreaterThan(5);
	const { audit } = assess(
		testModel(),
		{ sheet, warnings: [] },
		{ date: '2026-05-01', units: 'us', tool: '', draws: 0 },
	);
	expect(audit.findings.filter(({ verdict }) => verdict === 'not-evaluated')).toEqual([]);
});

test('the full sheet of version 1 still means what it meant, in every kind of answer', () => {
	const given = givenAnswers(open('version-1-full.json').sheet, questions);
	const kept = (id: string) => given.get(id)?.value;
	expect(kept('engine.bore')).toBe(0.1016);
	expect(kept('engine.ring_gap')).toBeCloseTo(0.0007112, 12);
	expect(kept('build.hot_day')).toBeCloseTo(309.15, 9);
	expect(kept('boost.target')).toBeCloseTo(55158.058, 3);
	expect(kept('boost.lambda')).toBe(0.8);
	expect(kept('boost.kind')).toBe('turbocharger');
	expect(kept('boost.check_valves')).toEqual(['brake-booster', 'canister-purge', 'crankcase']);
	// 630 cc/min of petrol at 0.72 kg/L.
	expect(kept('injectors.rated_flow')).toBeCloseTo(0.00756, 12);
	expect(kept('fuel.octane')).toBe(98);
	expect(kept('fuel.pump_wire_gauge')).toBeCloseTo(4e-6, 15);
	// A dash size counts sixteenths of an inch of a tube's outside.
	expect(kept('fuel.line_bore')).toBeCloseTo(0.0127, 12);
	expect(kept('sensors.map_full_scale')).toBeCloseTo(300e3, 6);
	expect(kept('harness.codes')).toEqual(['P0340', 'P0102']);
	expect(kept('ignition.towers')).toHaveLength(4);
	expect((kept('engine.compression') as number[])[2]).toBeNull();
	expect(given.has('engine.leakdown')).toBe(false);
	expect((kept('sensors.controller_curve') as number[][])[2]).toEqual([5, 0.25]);
	expect(kept('harness.circuits')).toMatchObject([{ circuit: 'check lamp', load: 0.3 }, { state: 'not-used' }]);
});

test('it answers every question that version 1 had, and keeps what is not ours', () => {
	const { sheet } = open('version-1-full.json');
	const answered = Object.entries(sheet.answers).flatMap(([section, inside]) =>
		Object.keys(inside).map(name => `${section}.${name}`),
	);
	expect(answered.length).toBeGreaterThanOrEqual(240);
	expect(sheet.shop_ticket).toEqual({ number: 17, open: true });
	expect(sheet.audits).toHaveLength(1);
	expect(sheet.answers.engine?.leakdown).toEqual({ known: 'not-known', note: 'no gauge yet' });
});
