import { describe, expect, test } from 'vitest';
import { worksheet } from '../../src/audit/worksheet.ts';
import { gaugeArea, wireDrop } from '../../src/physics/wire.ts';
import { composeAudit } from '../../src/report/compose/compose.ts';
import type { CircuitAnswer } from '../../src/sheet/sheet.ts';
import { emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { audited, changed } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const rows = (circuits: readonly CircuitAnswer[]) =>
	worksheet(audited(changed(buildSheet('boosted'), { 'harness.circuits': { value: circuits } })));

describe('the wiring worksheet', () => {
	test('wire and fuse follow from load and length: no more than 0.4 V lost, and the next thinner wire loses more', () => {
		const [row] = rows([{ circuit: 'pump feed', state: 'to-do', load: 12, length: 15 }]);
		const metres = 15 * 0.3048;
		expect(wireDrop(12, gaugeArea(row!.gauge!), metres)).toBeLessThanOrEqual(0.4);
		expect(wireDrop(12, gaugeArea(row!.gauge! + 2), metres)).toBeGreaterThan(0.4);
		expect(row!.fuse).toBeGreaterThanOrEqual(12 / 0.8);
	});

	test('a stated circuit takes the usual load of the one it names, and says that it is assumed', () => {
		const [row] = rows([{ circuit: 'Check  lamp', state: 'done', length: 10 }]);
		expect(row).toMatchObject({ load: 0.3, loadAssumed: true, state: 'done' });
		expect(row!.gauge).not.toBeNull();
		const [own] = rows([{ circuit: 'check lamp', state: 'done', load: 1, length: 10 }]);
		expect(own).toMatchObject({ load: 1, loadAssumed: false });
	});

	test('a circuit that has questions of its own takes their answers, stated in the worksheet or not', () => {
		const sheet = changed(buildSheet('boosted'), {
			'fuel.pump_current': { value: 13, unit: 'A', known: 'measured' },
			'fuel.pump_wire_length': { value: 14, unit: 'ft', known: 'measured' },
			'charging.alternator': { value: 120, unit: 'A', known: 'paperwork' },
			'charging.cable_length': undefined,
		});
		const find = (name: string, of = sheet) => worksheet(audited(of)).find(({ circuit }) => circuit === name)!;
		expect(find('fuel pump')).toMatchObject({ load: 13, loadAssumed: false });
		expect(find('fuel pump').length).toBeCloseTo(14 * 0.3048, 9);
		expect(find('alternator charge cable')).toMatchObject({ load: 120, loadAssumed: false, length: null });
		const answered = changed(sheet, {
			'harness.circuits': { value: [{ circuit: 'fuel pump', state: 'done', length: 9 }] },
		});
		expect(find('fuel pump', answered).load).toBe(13);
		expect(find('fuel pump', answered).length).toBeCloseTo(9 * 0.3048, 9);
	});

	test.each<CircuitAnswer>([
		{ circuit: 'horn', state: 'to-do', load: 8 },
		{ circuit: 'horn', state: 'to-do', length: 8 },
		{ circuit: 'horn', state: 'to-do', load: 0, length: 0 },
	])('without a length, or without a load, no size is claimed: %j', circuit => {
		expect(rows([circuit])[0]).toMatchObject({ gauge: null, fuse: null });
	});

	test('the usual circuits that were not stated follow, each once, those that do not apply left out', () => {
		const names = rows([{ circuit: 'fuel pump', state: 'done' }]).map(({ circuit }) => circuit);
		expect(names[0]).toBe('fuel pump');
		expect(names).toContain('keep-alive feed');
		expect(new Set(names).size).toBe(names.length);
		expect(names).not.toContain('shift solenoids');
		const automatic = changed(buildSheet('boosted'), { 'driveline.gearbox': { value: 'automatic' } });
		expect(worksheet(audited(automatic)).map(({ circuit }) => circuit)).toContain('shift solenoids');
	});
});

test('on paper, of the circuits that nobody noted, only what the next stage wants', () => {
	const names = (sheet: Sheet) =>
		composeAudit(audited(sheet))
			.details!.flatMap(block => (block.is === 'task' && !block.mark ? [block.text[0]] : []))
			.flatMap(part => (typeof part === 'object' && 'strong' in part ? [part.strong] : []));
	const early = names(emptySheet('new'));
	expect(early).toEqual([]);
	const cranks = names(withAnswer(emptySheet('new'), 'build.stage', { value: 'wired' }));
	expect(cranks).toContain('starter cable');
	expect(cranks).not.toContain('back-up lights');
	const answered = { value: [{ circuit: 'reverse lamps', state: 'to-do' }] };
	expect(names(changed(buildSheet('unboosted'), { 'harness.circuits': answered }))).toEqual(['reverse lamps']);
});
