import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { assess } from '../../../src/audit/assess.ts';
import { renderAudit } from '../../../src/report/render.ts';
import { emptySheet, type Sheet } from '../../../src/sheet/sheet.ts';
import { seed } from '../../counts.ts';
import { audited, brokenBuild, changed, thirdOf } from '../../support/audited.ts';
import { chance } from '../../support/chance.ts';
import { buildSheet, testModel } from '../../support/model.ts';
import { randomSheet } from '../../support/random-sheet.ts';

const demo = (name: string): Sheet =>
	JSON.parse(
		readFileSync(fileURLToPath(new URL(`../../../demo/${name}.sheet.json`, import.meta.url)), 'utf8'),
	) as Sheet;

const { rulebook, graph } = testModel();
const random = chance(seed);
const sheets: [string, Sheet][] = [
	...['half-finished', 'trailer-hauler', 'after-changes'].map((name): [string, Sheet] => [name, demo(name)]),
	...Array.from({ length: 10 }, (_, index): [string, Sheet] => [
		`random build ${index + 1}`,
		randomSheet(rulebook, graph, random),
	]),
	['nothing answered', emptySheet('x'.repeat(300))],
	['a finished car', buildSheet('unboosted')],
	['a third answered', thirdOf(brokenBuild())],
];

const options = { date: '2026-05-01', units: 'us', tool: '0.0.0', draws: 0 } as const;

/** What stands before the first heading of the second level. */
const pageOf = (sheet: Sheet) => {
	const assessment = assess(testModel(), { sheet, warnings: [] }, options);
	return { assessment, page: renderAudit(assessment, 'md', 'x').text.split('\n## ')[0]!.trimEnd() };
};

describe('page one', () => {
	const pages = sheets.map(([name, sheet]) => [name, pageOf(sheet)] as const);

	test.each(pages)('%s: at most 45 lines of at most 100 characters', (_, { page }) => {
		const lines = page.split('\n');
		expect(lines.length).toBeLessThanOrEqual(45);
		for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(100);
	});

	test.each(pages)('%s: says what is next, what must wait, what to do then, law and licensed help', (_, made) => {
		const { assessment, page } = made;
		expect(page).toContain(`${assessment.audit.date}. swap-audit `);
		expect(page).toMatch(/^\*\*Next:\*\* /m);
		expect(page).toMatch(/^\*\*When they are done:\*\* /m);
		expect(page).toContain('**Local law.**');
		expect(page).toContain('**Licensed help.**');
		const held = assessment.audit.stages.some(({ ready }) => !ready);
		expect(page.includes('**Until they are done:**')).toBe(held);
		if (!held) expect(page).toContain('**Each spring or after it stood:**');
	});

	test.each(pages)('%s: a tick has its place, and a line for each caution or all of their names', (_, made) => {
		const { assessment, page } = made;
		const ticks = page.match(/^- \[ \] .*(?:\n {4,}.*)*/gm) ?? [];
		const first = assessment.audit.findings.filter(({ verdict }) => verdict === 'fails').length;
		if (first > 0) expect(ticks.length).toBeGreaterThan(0);
		expect(ticks.length).toBeLessThanOrEqual(8);
		for (const tick of ticks) expect(tick.split('\n').length, tick).toBeLessThanOrEqual(2);
	});
});

describe('the length of an audit', () => {
	const lines = (sheet: Sheet) => renderAudit(audited(sheet, { draws: 20 }), 'md', 'x').text.split('\n').length;

	test('of a finished car without boost is at most 200 lines', () => {
		expect(lines(buildSheet('unboosted'))).toBeLessThanOrEqual(200);
	});

	test('of a half-finished one with boost is at most 900', () => {
		expect(lines(demo('half-finished'))).toBeLessThanOrEqual(900);
	});
});

test('what a rule pack stands in for, and what it changed, is one line', () => {
	const assessment = audited(brokenBuild());
	const mine = {
		pack: 'mine',
		prefills: ['sensors.cam_engine'],
		changes: [{ rule: 'fuel.worm-clamps', fields: ['why'] }],
	};
	const { text } = renderAudit({ ...assessment, audit: { ...assessment.audit, packs: [mine] } }, 'md', 'x');
	expect(text.split('\n## ')[0]!.replace(/\s+/g, ' ')).toContain(
		'**Rule pack mine:** stands in for `sensors.cam_engine`, which proves nothing. Changes `fuel.worm-clamps`.',
	);
});

test('a car that drives is not sent back to its first crank', () => {
	const at = (stage: string) => {
		const sheet = thirdOf(brokenBuild());
		const build = { ...sheet.answers.build, stage: { value: stage } };
		return renderAudit(audited({ ...sheet, answers: { ...sheet.answers, build } }), 'md', 'x').text;
	};
	const [wired, drives] = [at('wired'), at('drives')];
	expect(wired).toContain('### First crank');
	expect(drives).not.toContain('### First crank');
	expect(drives).toContain('### First boost');
	expect(wired).toContain('do not turn the starter');
	expect(drives).toContain('leave it parked with the engine off. It has run with these open.');
});

test('with the engine on the stand, page one names what is wrong for later stages and open only now', () => {
	const at = (stage: string) =>
		renderAudit(
			audited(
				changed(buildSheet('boosted'), {
					'build.stage': { value: stage },
					'engine.ring_gap': { value: 0.01, unit: 'in', known: 'measured' },
					'driveline.pilot_bearing': { value: 'not-fitted' },
					'boost.overboost_cut': { value: ['none'] },
				}),
			),
			'md',
			'x',
		)
			.text.split('\n## ')[0]!
			.replace(/\s+/g, ' ');
	const onStand = at('on-stand');
	expect(onStand).toMatch(/\*\*Do also while it is out:\*\* [^*]*top ring gap too small for the boost/);
	expect(onStand).not.toMatch(/while it is out:\*\* [^*]*runaway boost/);
	expect(onStand).toContain('**Pilot bearing missing.** On the bench.');
	expect(onStand).not.toContain('The day itself');
	expect(at('wired')).not.toContain('while it is out');
});
