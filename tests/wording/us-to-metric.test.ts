import { describe, expect, test } from 'vitest';
import { inMetric } from '../../src/wording/us-to-metric.ts';
import { audited } from '../support/audited.ts';
import { buildSheet } from '../support/model.ts';

describe('the words of a rule in metric units', () => {
	test.each([
		['Stop at 230 degF.', 'Stop at 110 degC.'],
		['A gap of 0.06 to 0.19 in all round.', 'A gap of 1.5 to 4.8 mm all round.'],
		['3/4 in is the least, 1 1/2 in is better.', '19 mm is the least, 38 mm is better.'],
		['10 psi for each 1000 rpm, never under 6 psi', '0.69 bar for each 1000 rpm, never under 0.41 bar'],
		['At a steady 65 mph in top gear', 'At a steady 105 km/h in top gear'],
		['At 16 lb-ft, and 100 hp more', 'At 22 N m, and 75 kW more'],
		['agrees at 30 and 60 mph', 'agrees at 48 and 97 km/h'],
		['walls of 0.065, 0.083 or 0.095 in', 'walls of 1.7, 2.1 or 2.4 mm'],
		['nothing within 10 ft', 'nothing within 3 m'],
	])('%s', (us, metric) => {
		expect(inMetric(us)).toBe(metric);
	});

	test('a difference of temperatures is no temperature', () => {
		expect(inMetric('agrees within 10 degF')).toBe('agrees within 5.6 degC');
		expect(inMetric('no more than 18 degF over the first')).toBe('no more than 10 degC over the first');
	});

	test.each([
		'three pulls, 3 in a row',
		'76 in 100',
		'a 3/8 line',
		'hose printed 30R9',
		'{10 psi}',
		'10 A, 12 V, 3000 rpm',
		'7000 ohm/ft',
	])('what is no such figure stays: %s', text => {
		expect(inMetric(text)).toBe(text);
	});

	test('no finding of a metric audit speaks in psi, degF or inches', () => {
		const { findings } = audited(buildSheet('boosted'), { units: 'metric' }).audit;
		for (const { why, do: steps, prove, rule } of findings)
			expect([why, ...steps, prove].join(' '), rule).not.toMatch(/\d (psi|degF|mph|lb-ft|hp|in(?! a))\b/);
	});
});
