import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/audit/audit.ts';
import { type Course, courseOf, gateOpen, readiness } from '../../src/audit/stages.ts';
import { stages } from '../../src/sheet/stage.ts';
import { audited, changed } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const finding = (stage: Finding['stage'], verdict: Finding['verdict'], more: Partial<Finding> = {}) =>
	({
		stage,
		verdict,
		harm: 'engine',
		unproved: false,
		prove_during: false,
		not_wanted: false,
		covered_by: null,
		...more,
	}) as Finding;

const onStand: Course = { engineIn: false, unboosted: false };
const rowsOf = (found: readonly Finding[], course: Partial<Course> = {}) =>
	new Map(readiness(found, { ...onStand, ...course }).map(row => [row.stage, row]));
const ready = (found: readonly Finding[], course: Partial<Course> = {}) =>
	[...rowsOf(found, course).values()].filter(row => row.ready).map(({ stage }) => stage);

describe('a stage is ready', () => {
	test('when nothing serious of its own is open, nor of any stage before it', () => {
		expect(ready([finding('fire', 'fails')])).toEqual(['install', 'crank']);
		expect(ready([finding('fire', 'holds'), finding('fire', 'does-not-apply')])).toEqual(stages);
	});

	test('whatever only wears or annoys', () => {
		for (const verdict of ['fails', 'cannot-tell', 'not-evaluated'] as const)
			for (const harm of ['wear', 'annoys'] as const)
				expect(ready([finding('crank', verdict, { harm })])).toEqual(stages);
	});

	test.each(['fails', 'cannot-tell', 'not-evaluated'] as const)('not when something serious %s', verdict => {
		for (const harm of ['person', 'engine', 'strands'] as const)
			expect(rowsOf([finding('move', verdict, { harm })]).get('move')).toMatchObject({ ready: false, waits_for: [] });
	});

	test('not on a line that holds and is not proved', () => {
		expect(ready([finding('boost', 'holds', { unproved: true })])).toEqual(['install', 'crank', 'fire', 'move']);
	});

	test('though something can only be proved during it', () => {
		const rows = rowsOf([finding('boost', 'cannot-tell', { prove_during: true })]);
		expect(rows.get('boost')).toMatchObject({ ready: true, cannot_tell: 0, prove_during: 1 });
	});

	test('for boost, without boost, when it is ready to move', () => {
		expect(ready([finding('boost', 'fails')], { unboosted: true })).toEqual(stages);
		expect(ready([finding('move', 'fails')], { unboosted: true })).toEqual(['install', 'crank', 'fire']);
	});
});

test('what waits says for which stages: those with something open of their own', () => {
	const rows = rowsOf([finding('crank', 'fails'), finding('fire', 'holds'), finding('move', 'cannot-tell')]);
	expect([...rows.values()].map(({ waits_for }) => waits_for)).toEqual([
		[],
		[],
		['crank'],
		['crank'],
		['crank', 'move'],
		['crank', 'move'],
	]);
});

test('the engine in, what belonged before that is counted before it cranks', () => {
	const found = [finding('install', 'fails'), finding('install', 'cannot-tell')];
	const out = rowsOf(found);
	expect(out.get('install')).toMatchObject({ ready: false, fails: 1, cannot_tell: 1 });
	expect(out.get('crank')).toMatchObject({ ready: false, fails: 0, waits_for: ['install'] });
	const rows = rowsOf(found, { engineIn: true });
	expect(rows.get('install')).toMatchObject({ ready: true, fails: 0, cannot_tell: 0 });
	expect(rows.get('crank')).toMatchObject({ ready: false, fails: 1, cannot_tell: 1, waits_for: [] });
});

test.each([
	['on-stand', false],
	['in-bay', true],
	['wired', true],
	['has-fired', true],
	['drives', true],
	[undefined, false],
])('build.stage %s: the engine is in: %s', (stage, engineIn) => {
	const sheet = changed(buildSheet('unboosted'), { 'build.stage': stage === undefined ? stage : { value: stage } });
	expect(courseOf(audited(sheet).state)).toEqual({ engineIn, unboosted: true });
});

test('a gate is open when its own row is ready', () => {
	const rows = readiness([finding('fire', 'fails')], onStand);
	expect(stages.map(stage => gateOpen(rows, stage))).toEqual([true, true, false, false, false, false]);
});

describe('what only a running or a driven car shows', () => {
	const boosted = buildSheet('boosted');
	const rows = (answers: Parameters<typeof changed>[1]) =>
		new Map(audited(changed(boosted, answers)).audit.stages.map(row => [row.stage, row]));

	test('is proved during its stage, and shuts no gate before', () => {
		const never = rows({ 'boost.logged_peak': undefined, 'ignition.knock_seen': undefined });
		expect(never.get('boost')).toMatchObject({ ready: true, cannot_tell: 0 });
		expect(never.get('boost')!.prove_during).toBeGreaterThanOrEqual(2);
	});

	test('shuts the gate of a later stage', () => {
		const oil = rows({ 'engine.oil_pressure_idle': undefined });
		expect(oil.get('fire')!.ready).toBe(true);
		expect(oil.get('move')!.ready).toBe(false);
	});
});
