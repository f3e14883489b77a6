import { expect, test } from 'vitest';
import { formatAnswer, formatValue } from '../../src/wording/format.ts';
import { testModel } from '../support/model.ts';

const question = (id: string) => testModel().rulebook.questions.find(one => one.id === id)!;

test('a circuit has its length in the units of its reader', () => {
	const answer = { value: [{ circuit: 'fan', from: '', to: '', state: 'done' as const, load: 28, length: 10 }] };
	expect(formatAnswer(question('harness.circuits'), answer, 'us')).toBe('fan (done, 28 A, 10 ft)');
	// 10 ft are 3.048 m by definition.
	expect(formatAnswer(question('harness.circuits'), answer, 'metric')).toMatch(/^fan \(done, 28 A, 3\.05 m\)$/);
});

test('one choice reads alike, as a bare text and as a list', () => {
	for (const value of ['crash-switch', ['crash-switch']])
		expect(formatAnswer(question('harness.pump_cutoff'), { value }, 'us')).toBe('a crash switch');
});

// 1 psi is 6894.757 Pa, NIST SP 811. A gauge in bar is read to 0.01.
test('a pressure is in bar no finer than a gauge shows it', () => {
	const what = { question: question('boost.target') };
	expect(formatValue(10 * 6894.757, what, 'metric')).toBe('0.69 bar');
	expect(formatValue(150 * 6894.757, what, 'metric')).toBe('10.3 bar');
	expect(formatValue(0.5 * 6894.757, what, 'metric')).toBe('0.0345 bar');
	expect(formatValue(10 * 6894.757, what, 'us')).toBe('10 psi');
});
