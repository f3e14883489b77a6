import { describe, expect, test } from 'vitest';
import { usualDraws } from '../../src/audit/audit.ts';
import { standsInTheWay } from '../../src/audit/stages.ts';
import { relevanceOf } from '../../src/interview/relevance.ts';
import { type Answer, emptySheet } from '../../src/sheet/sheet.ts';
import { type Stage, stages } from '../../src/sheet/stage.ts';
import { audited, changed } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';
import { finished, shownByDriving, sound } from './finished.ts';

describe('a finished, sound car passes every gate', () => {
	test.each(finished)('%s', (_, sheet) => {
		const { audit } = audited(sheet, { gateDraws: usualDraws });
		expect(audit.findings.filter(standsInTheWay).map(({ rule }) => rule)).toEqual([]);
		expect(audit.stages.map(({ ready }) => ready)).toEqual(stages.map(() => true));
	});

	test('what it has still to show is proved during its stage', () => {
		const never = finished.find(([name]) => name === 'boosted, never boosted yet')![1];
		const proofs = audited(never).audit.findings.filter(({ prove_during }) => prove_during);
		const waited = new Set(proofs.flatMap(({ missing }) => missing));
		for (const id of waited) expect(shownByDriving).toContain(id);
		expect(waited.size).toBeGreaterThan(5);
	});
});

describe('no line fails on a sound car of another kind, and none holds it up', () => {
	test.each(sound)('%s', (_, sheet) => {
		const { findings } = audited(sheet).audit;
		expect(findings.filter(({ verdict }) => verdict === 'fails').map(({ rule }) => rule)).toEqual([]);
		expect(findings.filter(standsInTheWay).map(({ rule }) => rule)).toEqual([]);
	});
});

/** An answer each that spoils a finished car, or the lack of one, and the first gate that it shuts. */
const spoilt: readonly [id: string, answer: Answer | undefined, first: Stage][] = [
	['engine.oil_look', { value: 'metal' }, 'crank'],
	['fuel.hose', { value: 'carburettor-rated' }, 'crank'],
	['fuel.leak_test', undefined, 'crank'],
	['charging.cable_fuse', { known: 'not-known' }, 'crank'],
	['harness.grounds', { value: ['heads'] }, 'crank'],
	['sensors.cam_harness', { value: 'none' }, 'fire'],
	['build.checked_before_move', { value: ['brakes-hold'] }, 'move'],
	['engine.oil_pressure_idle', undefined, 'move'],
];

describe('an unfinished one does not', () => {
	test.each(finished.flatMap(([name, sheet]) => spoilt.map(fault => [name, ...fault, sheet] as const)))(
		'%s, %s %j: shut from %s on',
		(_, id, answer, first, sheet) => {
			const { audit } = audited(changed(sheet, { [id]: answer }));
			const open = audit.stages.filter(({ ready }) => ready).map(({ stage }) => stage);
			expect(open).toEqual(stages.slice(0, stages.indexOf(first)));
		},
	);

	test('with nothing answered not even the first gate is open', () => {
		expect(audited(emptySheet('nothing')).audit.stages.some(({ ready }) => ready)).toBe(false);
	});
});

describe('an engine that nobody opened', () => {
	const { rulebook } = testModel();
	const inside = rulebook.questions.filter(
		({ id, wantedWhen }) => wantedWhen && (id.startsWith('engine.') || id.startsWith('sensors.meter_')),
	);
	const asked = (answers: Record<string, Answer>) => {
		const bare = Object.fromEntries(inside.map(({ id }) => [id, undefined]));
		const sheet = changed(buildSheet('unboosted'), { ...bare, ...answers });
		const { inEffect } = relevanceOf(testModel(), sheet);
		return inside.filter(inEffect).map(({ id }) => id);
	};

	test('is not asked for what is inside, unboosted', () => {
		expect(asked({})).toEqual([]);
	});

	test.each([
		['opened', { 'engine.history': { value: ['opened-up'] } }, 'engine.bearings'],
		['renewed inside', { 'engine.bearings': { value: 'renewed' } }, 'engine.deck_clearance'],
		[
			'uneven',
			{ 'engine.compression': { value: [160, 100, 160, 160, 160, 160, 160, 160], unit: 'psi' } },
			'engine.leakdown',
		],
	] as const)('is, once it was %s', (_, answers, id) => {
		expect(asked(answers as Record<string, Answer>)).toContain(id);
	});

	test('an answer that nobody asked for counts all the same', () => {
		const tight = changed(finished.at(-1)![1], {
			'engine.deck_clearance': { value: -0.02, unit: 'in', known: 'measured' },
			'engine.gasket_thickness': { value: 0.04, unit: 'in', known: 'measured' },
		});
		const near = audited(tight).audit.findings.find(({ rule }) => rule === 'engine.piston-near-head');
		expect(near?.verdict).toBe('fails');
	});
});
