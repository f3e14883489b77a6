import { expect, test } from 'vitest';
import { asFineAsBand } from '../../src/wording/as-fine-as-band.ts';
import { Wording } from '../../src/wording/template.ts';
import { testModel } from '../support/model.ts';

const { rulebook, quantities } = testModel();
const limit = 'driveline.clutch_boost_limit';
const psi = 6894.757;

// How a gauge is read: no finer than what is known of the figure (common practice).
test.each([
	['us', 2.413, 0, 6.13, '2.4 psi'],
	['us', 0.804, 0.2, 5.86, '0.8 psi'],
	['us', 34.53, 24.3, 40, '35 psi'],
	['us', 8.337, 8.32, 8.35, '8.34 psi'],
	['metric', 2.413, 0, 6.13, '0.17 bar'],
] as const)('%s: %f psi in a band of %f to %f', (units, value, low, high, words) => {
	const wording = new Wording(rulebook.questions, quantities, units);
	const write = asFineAsBand(wording, limit, { low: low * psi, high: high * psi });
	expect(write(value * psi)).toBe(words);
});

test('without a band it is written like any value', () => {
	const wording = new Wording(rulebook.questions, quantities, 'us');
	expect(asFineAsBand(wording, limit, { low: null, high: null })(2.413 * psi)).toBe(wording.show(limit, 2.413 * psi));
	expect(asFineAsBand(wording, limit, { low: psi, high: psi })(psi)).toBe('1 psi');
});
