import { describe, expect, test } from 'vitest';
import { fittedProcedures } from '../../src/audit/procedures.ts';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { audited, changed } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

const boosted = buildSheet('boosted');
const of = (sheet = boosted) => fittedProcedures(audited(sheet));
const steps = (sheet = boosted) => of(sheet).flatMap(procedure => procedure.steps.map(step => step.do));

describe('the day itself', () => {
	test('from before paying to after the first miles they stand in order; without boost its day is left out', () => {
		const titles = of().map(({ title }) => title);
		const short = titles.map(title => title.split(',')[0]);
		expect(short).toEqual([
			'Before you pay',
			'Before the controller is plugged in',
			'First crank',
			'First fire',
			'First drive',
			'First boost',
			'After the first hour',
		]);
		expect(of(buildSheet('unboosted')).map(({ title }) => title)).toEqual(
			titles.filter(title => title !== 'First boost'),
		);
	});

	test.each([
		['a full build', boosted],
		['nothing answered', emptySheet('nothing')],
	])('%s: every first crank and fire begins on stands, out of gear, doors open, with an extinguisher', (_, sheet) => {
		for (const { steps: own } of of(sheet).filter(({ title }) => /^First (crank|fire)/.test(title))) {
			const first = own
				.slice(0, 6)
				.map(step => step.do)
				.join(' ');
			for (const word of ['four stands', 'chock', 'brake on', 'doors', 'exhaust', 'extinguisher', 'battery disconnect'])
				expect(first).toContain(word);
		}
	});

	test('steps fit the answers; a step that may apply stays', () => {
		const clutch = (all: readonly string[]) => all.filter(step => /clutch down/i.test(step)).length;
		const automatic = steps(changed(boosted, { 'driveline.gearbox': { value: 'automatic' } }));
		expect(clutch(automatic)).toBeLessThan(clutch(steps()));
		const open = steps(changed(boosted, { 'driveline.gearbox': undefined }));
		expect(open.length).toBeGreaterThan(Math.max(automatic.length, steps().length));
	});

	test.each([
		['boosted', boosted],
		['unboosted', buildSheet('unboosted')],
		['empty', emptySheet('nothing')],
	])('%s: no text keeps a name in braces, whatever is known', (_, sheet) => {
		for (const { steps: own } of of(sheet))
			for (const step of own) expect([step.do, step.read, step.stop].join(' ')).not.toMatch(/[{}]/);
	});

	test('a procedure is ready when its stage and all before it are', () => {
		expect(of().map(({ ready }) => ready)).toEqual([true, true, true, true, true, true, true]);
		const bareHose = changed(boosted, { 'fuel.hose': { value: 'carburettor-rated' } });
		expect(of(bareHose).map(({ ready }) => ready)).toEqual([true, false, false, false, false, false, false]);
		const untried = changed(boosted, { 'build.checked_before_move': { value: [] } });
		expect(of(untried).map(({ ready }) => ready)).toEqual([true, true, true, true, false, false, false]);
	});

	test('a figure over its limit says do not pull instead of what to read; a figure that is not known does not', () => {
		const duty = (sheet = boosted) =>
			steps(sheet).filter(step => /injector duty/i.test(step) && !/^Put on one log/.test(step));
		expect(duty()).toEqual(['Read injector duty at the top of the pull.']);
		const small = duty(changed(boosted, { 'injectors.rated_flow': { value: 19, unit: 'lb/h' } }));
		expect(small.length).toBe(1);
		expect(small[0]).toMatch(/^Do not pull\. Injector duty would come to \d+.* and the limit is 85 %/);
		expect(duty(changed(boosted, { 'injectors.rated_flow': undefined }))).toEqual(duty());
	});
});
