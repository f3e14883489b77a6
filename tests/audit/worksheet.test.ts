import { describe, expect, test } from 'vitest';
import { worksheet } from '../../src/audit/worksheet.ts';
import { gaugeArea, wireDrop } from '../../src/physics/wire.ts';
import type { CircuitAnswer } from '../../src/sheet/sheet.ts';
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

	test('a told circuit takes the usual load of the one it names, and says that it is assumed', () => {
		const [row] = rows([{ circuit: 'Fuel  pump', state: 'done', length: 10 }]);
		expect(row).toMatchObject({ load: 10, loadAssumed: true, state: 'done' });
		expect(row!.gauge).not.toBeNull();
		const [own] = rows([{ circuit: 'fuel pump', state: 'done', load: 14, length: 10 }]);
		expect(own).toMatchObject({ load: 14, loadAssumed: false });
	});

	test.each<CircuitAnswer>([
		{ circuit: 'horn', state: 'to-do', load: 8 },
		{ circuit: 'horn', state: 'to-do', length: 8 },
		{ circuit: 'horn', state: 'to-do', load: 0, length: 0 },
	])('without a length, or without a load, no size is claimed: %j', circuit => {
		expect(rows([circuit])[0]).toMatchObject({ gauge: null, fuse: null });
	});

	test('the usual circuits that were not told follow, each once, those that do not apply left out', () => {
		const names = rows([{ circuit: 'fuel pump', state: 'done' }]).map(({ circuit }) => circuit);
		expect(names[0]).toBe('fuel pump');
		expect(names).toContain('keep-alive feed');
		expect(new Set(names).size).toBe(names.length);
		expect(names).not.toContain('shift solenoids');
		const automatic = changed(buildSheet('boosted'), { 'driveline.gearbox': { value: 'automatic' } });
		expect(worksheet(audited(automatic)).map(({ circuit }) => circuit)).toContain('shift solenoids');
	});
});
