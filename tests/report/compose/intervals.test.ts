import { describe, expect, test } from 'vitest';
import { checksByDistance } from '../../../src/audit/intervals.ts';
import { composePlan } from '../../../src/report/compose/plan.ts';
import { printMarkdown } from '../../../src/report/markdown.ts';
import { renderAudit } from '../../../src/report/render.ts';
import type { Answer } from '../../../src/sheet/sheet.ts';
import { audited, changed } from '../../support/audited.ts';
import { buildSheet } from '../../support/model.ts';

/** A finished car that has been driven so far, with some checks done. */
const driven = (answer: Answer | undefined, done: readonly string[] = [], units: 'us' | 'metric' = 'us') =>
	audited(
		changed(buildSheet('unboosted'), {
			'build.miles_since_first_drive': answer,
			'build.checked_after_miles': { value: [...done] },
		}),
		{ units },
	);
const miles = (value: number): Answer => ({ value, unit: 'mi', known: 'measured' });
const pageOf = (assessment: ReturnType<typeof driven>) =>
	renderAudit(assessment, 'md', 'x').text.split('\n## ')[0]!.replace(/\s+/g, ' ');
const planOf = (assessment: ReturnType<typeof driven>, lines: Parameters<typeof composePlan>[0]['evenings'] = []) =>
	printMarkdown(
		composePlan({ stage: null, minutes: 120, have: new Set(), evenings: lines, waiting: [] }, assessment),
		null,
	).replace(/\s+/g, ' ');

describe('checks by distance', () => {
	// 1 mi is 1609.344 m (international mile).
	test('each is due where its rule says, less what has been driven; what is done is known', () => {
		const checks = checksByDistance(driven(miles(40), ['first-hour']));
		expect(checks.map(({ due, done }) => [due && due / 1609.344, done])).toEqual([
			[30, true],
			[100, false],
			[500, false],
			[null, false],
			[null, false],
			[null, false],
		]);
		expect(checks[1]!.left).toBeCloseTo(60 * 1609.344, 6);
		expect(checks[3]!.left).toBeNull();
	});

	test('the one that comes round is counted from the last of the first ones', () => {
		const all = ['first-hour', 'hundred-miles', 'five-hundred-miles'];
		// 4000 mi is 500 mi past the first regular one at 3500 mi.
		expect(checksByDistance(driven(miles(4000), all))[3]!.left).toBeCloseTo(2500 * 1609.344, 6);
	});

	test('page one of a car that nothing holds up says which is due and how far the next ones are', () => {
		const page = pageOf(driven(miles(40)));
		expect(page).toContain('**First-hour check, at 30 mi, due now:**');
		expect(page).toContain('**Early check, at 100 mi (60 mi to go):**');
		expect(page).toContain('1 line holds nothing up and is in the list below.');
		expect(pageOf(driven(miles(40), ['first-hour']))).not.toContain('First-hour check');
		expect(pageOf(driven(undefined))).toContain('**Early check, at 100 mi:**');
	});

	test('in round kilometers for a metric reader', () => {
		const page = pageOf(driven({ value: 100, unit: 'km', known: 'measured' }, ['first-hour'], 'metric'));
		expect(page).toContain('**Early check, at 160 km (61 km to go):**');
		expect(page).toContain('**First oil change, at 800 km (705 km to go):**');
		expect(page).not.toMatch(/\d mi\b/);
	});

	test('the plan has them behind its evenings, with their cautions in full; one that an evening has stands there', () => {
		const plan = planOf(driven(miles(40)));
		expect(plan).toMatch(/## By distance since the first drive - \[ \] \*\*First-hour check, at 30 mi, due now:\*\*/);
		expect(plan).toMatch(/## Cautions .*\*\*Jacks and stands\.\*\*/);
		expect(plan).not.toContain('Each spring');
		expect(planOf(audited(changed(buildSheet('unboosted'), { 'build.stage': { value: 'wired' } })))).not.toContain(
			'due now',
		);
	});
});
