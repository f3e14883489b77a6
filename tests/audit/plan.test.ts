import { describe, expect, test } from 'vitest';
import type { Assessment } from '../../src/audit/assess.ts';
import type { Finding } from '../../src/audit/audit.ts';
import { findOuts } from '../../src/audit/find-out.ts';
import { type Evening, planEvenings } from '../../src/audit/plan.ts';
import { nextStage, type PlanLine, planLines } from '../../src/audit/plan-lines.ts';
import { standsInTheWay } from '../../src/audit/stages.ts';
import { harms, stages } from '../../src/rulebook/rulebook.ts';
import { accesses } from '../../src/sheet/access.ts';
import { counts, seed } from '../counts.ts';
import { audited, brokenBuild, changed, thirdOf } from '../support/audited.ts';
import { chance } from '../support/chance.ts';
import { testModel } from '../support/model.ts';
import { randomSheet } from '../support/random-sheet.ts';

const random = chance(seed);

/** A line of a plan with everything plain but what is said: work, or a look. */
const line = (key: string, said: Partial<PlanLine> = {}): PlanLine => ({
	key,
	finding: said.look ? null : ({} as Finding),
	findOut: null,
	access: 'bay',
	minutes: 30,
	opens: [],
	harm: 'engine',
	look: false,
	needs: [],
	...said,
});

/** Lines of any places, times and harms, each needing some of those before it. */
const randomLines = (): PlanLine[] =>
	Array.from({ length: Math.floor(random() * 40) }, (_, at) => {
		const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
		const look = random() < 0.3;
		return line(`line ${at}`, {
			access: one(accesses),
			minutes: look ? 5 : one([10, 30, 45, 60, 90, 150]),
			opens: random() < 0.1 ? [one(accesses)] : [],
			harm: one(harms),
			look,
			needs: Array.from({ length: at > 0 && random() < 0.4 ? 2 : 0 }, () => `line ${Math.floor(random() * at)}`),
		});
	});

const inShort = (evenings: readonly Evening[]) =>
	evenings.map(({ access, lines }) => `${access}: ${lines.map(({ key }) => key).join(' ')}`);

/** What holds for every plan of whole lines. */
function expectSound(lines: readonly PlanLine[], minutes: number): void {
	const { evenings, waiting } = planEvenings(lines, { minutes });
	const done = evenings.flatMap(evening => evening.lines);
	expect(waiting).toEqual([]);
	expect(done.map(({ key }) => key).sort()).toEqual(lines.map(({ key }) => key).sort());
	for (const [at, { key, needs }] of done.entries())
		for (const need of needs)
			expect(
				done.findIndex(other => other.key === need),
				`${need} before ${key}`,
			).toBeLessThan(at);
	for (const evening of evenings) {
		expect(evening.minutes).toBe(evening.lines.reduce((sum, one) => sum + one.minutes, 0));
		if (evening.lines.length > 1) expect(evening.minutes).toBeLessThanOrEqual(minutes);
		const open = new Set([evening.access, ...evening.lines.flatMap(({ opens }) => opens)]);
		for (const { key, access, look } of evening.lines)
			if (!look) expect(open, `${key} in the evening at ${evening.access}`).toContain(access);
	}
	expect(planEvenings(lines, { minutes }).evenings).toEqual(evenings);
}

describe('evenings', () => {
	test('of any lines: none lost, none before what it needs, one place at a time, the time kept', () => {
		for (let turn = 0; turn < counts.plans; turn++) expectSound(randomLines(), 30 + Math.floor(random() * 200));
	});

	test('what hurts people comes first, and with it what that needs', () => {
		const lines = [
			line('fan', { access: 'front' }),
			line('buy it', { access: 'tank', harm: 'annoys' }),
			line('leak', { access: 'rail', harm: 'person', needs: ['buy it'] }),
		];
		expect(inShort(planEvenings(lines, { minutes: 120 }).evenings)).toEqual([
			'tank: buy it',
			'rail: leak',
			'front: fan',
		]);
	});

	test('what is open stays open until nothing is left there, and what it opens is done with it', () => {
		const lines = [
			line('clutch', { access: 'transmission-out', minutes: 100, opens: ['under'] }),
			line('brakes', { access: 'wheel' }),
			line('flywheel', { access: 'transmission-out', minutes: 60, harm: 'annoys' }),
			line('shaft', { access: 'under', minutes: 20, harm: 'annoys' }),
		];
		expect(inShort(planEvenings(lines, { minutes: 120 }).evenings)).toEqual([
			'transmission-out: clutch shaft',
			'transmission-out: flywheel',
			'wheel: brakes',
		]);
	});

	test('a look goes into the evening that is there anyhow; papers into the time that is left', () => {
		const lines = [
			line('ticket', { access: 'papers', look: true, minutes: 5 }),
			line('strap', { access: 'bay' }),
			line('hose', { access: 'under', look: true, minutes: 5 }),
			line('line', { access: 'under', harm: 'person' }),
		];
		expect(inShort(planEvenings(lines, { minutes: 120 }).evenings)).toEqual(['under: line hose ticket', 'bay: strap']);
	});

	test('nothing big is opened for an answer alone: such answers come last', () => {
		const lines = [line('deck', { access: 'heads-off', finding: null }), line('strap', { harm: 'annoys' })];
		const { evenings } = planEvenings(lines, { minutes: 120 });
		expect(inShort(evenings)).toEqual(['bay: strap', 'heads-off: deck']);
		expect(evenings.map(({ waits }) => waits)).toEqual([false, true]);
		const rear = [line('seal', { access: 'transmission-out', finding: null }), line('strap', { harm: 'annoys' })];
		expect(planEvenings(rear, { minutes: 120 }).evenings[0]!.access).toBe('bay');
		expect(planEvenings(rear, { minutes: 120, engineOut: true }).evenings[0]!.access).toBe('transmission-out');
	});

	test('a line longer than the time there is has an evening to itself', () => {
		const lines = [line('head', { minutes: 480 }), line('strap')];
		expect(inShort(planEvenings(lines, { minutes: 60 }).evenings)).toEqual(['bay: head', 'bay: strap']);
	});

	test('of one place: what is elsewhere, or needs something elsewhere, waits', () => {
		const lines = [line('a', { access: 'under' }), line('b'), line('c', { access: 'under', needs: ['b'] })];
		const { evenings, waiting } = planEvenings(lines, { minutes: 120, only: 'under' });
		expect(inShort(evenings)).toEqual(['under: a']);
		expect(waiting.map(({ key }) => key)).toEqual(['b', 'c']);
	});
});

describe('the lines of the next stage', () => {
	const model = testModel();
	const held = (assessment: Assessment) => {
		const stage = nextStage(assessment)!;
		const until = stages.slice(0, stages.indexOf(stage) + 1);
		return { stage, until };
	};

	/** Everything open is a line, once; the lines make a sound plan. */
	function expectWhole(assessment: Assessment): void {
		const { stage, until } = held(assessment);
		const lines = planLines(assessment, stage);
		const keys = lines.map(({ key }) => key);
		expect(new Set(keys).size).toBe(keys.length);
		for (const finding of assessment.audit.findings) {
			if (!until.includes(finding.stage) || !standsInTheWay(finding)) continue;
			const known = lines.some(
				({ finding: own, findOut }) => own === finding || findOut?.settles.some(settled => settled === finding),
			);
			expect(known, `${finding.rule} ${finding.subject}`).toBe(true);
		}
		const asked = findOuts(assessment).filter(findOut => until.includes(findOut.stage));
		for (const { question } of asked) expect(keys).toContain(question.id);
		expectSound(lines, 120);
	}

	test('of random sheets: everything that is open, and in an order that can be followed', { timeout: 120_000 }, () => {
		for (let turn = 0; turn < counts.plannedSheets; turn++) {
			// Lists by cylinder are as long as there are cylinders.
			const eight = changed(randomSheet(model.rulebook, model.graph, random), { 'engine.cylinders': { value: 8 } });
			const third = changed(thirdOf(eight), { 'engine.cylinders': { value: 8 } });
			expectWhole(audited(third, {}, model));
		}
	});

	// Common practice: nobody opens a fuel line without an extinguisher, tests for leaks before the last joint is made, or turns
	// an engine that stood on dry bearings to read its compression.
	test.each([
		['fuel.no-extinguisher', 'fuel.hose-not-for-injection'],
		['fuel.hose-not-for-injection', 'fuel.leak-test-not-done'],
		['engine.not-primed-after-standing', 'engine.compression-uneven'],
	])('%s is done before %s', (first, then) => {
		const stood = changed(brokenBuild(), {
			'build.stage': { value: 'wired' },
			'fuel.extinguisher': { value: 'none' },
			'fuel.leak_test': { value: 'not-done' },
			'engine.history': { value: ['stood-a-year'] },
			'engine.oil_primed': { value: 'not-yet' },
		});
		const assessment = audited(stood);
		const { evenings } = planEvenings(planLines(assessment, 'fire'), { minutes: 120 });
		const order = evenings.flatMap(({ lines }) => lines.map(({ key }) => key));
		expect(order).toEqual(expect.arrayContaining([first, then]));
		expect(order.indexOf(first)).toBeLessThan(order.indexOf(then));
	});

	test('of a broken build: all of it', () => expectWhole(audited(brokenBuild())));
});
