import { describe, expect, test } from 'vitest';
import { changed, opened, problemsOf } from './problems.ts';

const record = {
	date: '2026-05-01',
	name: 'Workshop mule',
	rules: 'abc',
	verdicts: [
		{ rule: 'ignition.gap-too-wide', subject: null, verdict: 'fails', distance: 0.3 },
		{ rule: 'harness.ground-missing', subject: 'heads', verdict: 'holds' },
	],
	numbers: { 'engine.power': 250000 },
	answers: { 'ignition.gap': 'f00' },
};

const withAudits = (audits: unknown) => changed(sheet => (sheet.audits = audits));

describe('the audits that a sheet keeps', () => {
	test('are taken, with keys that a later program may add', () => {
		const { sheet } = opened(
			withAudits([
				record,
				{ ...record, name: undefined, more: 1 },
				{ ...record, held: 'abcd', undecided: '', answers: 'f00' },
			]),
		);
		expect(sheet.audits[1]).toMatchObject({ more: 1 });
	});

	test.each([
		['no list', {}, 'audits'],
		['null', null, 'audits'],
		['a record that is none', [record, 7], 'audits[1]'],
		['a day that is none', [{ ...record, date: 'yesterday' }], 'audits[0].date'],
		['no rules', [{ ...record, rules: undefined }], 'audits[0].rules'],
		['verdicts that are no list', [{ ...record, verdicts: {} }], 'audits[0].verdicts'],
		['a verdict that is none', [{ ...record, verdicts: [null] }], 'audits[0].verdicts'],
		[
			'a number for a subject',
			[{ ...record, verdicts: [{ rule: 'a', subject: 7, verdict: 'fails' }] }],
			'audits[0].verdicts',
		],
		['codes that are a list', [{ ...record, held: ['abcd'] }], 'audits[0].held'],
		[
			'a distance as text',
			[{ ...record, verdicts: [{ rule: 'a', subject: null, verdict: 'fails', distance: '1' }] }],
			'audits[0].verdicts',
		],
		['a number as text', [{ ...record, numbers: { a: '1' } }], 'audits[0].numbers'],
		['answers that are a list', [{ ...record, answers: [] }], 'audits[0].answers'],
		['a name that is no text', [{ ...record, name: 7 }], 'audits[0].name'],
	] as const)('are refused with %s', (_, audits, path) => {
		const [problem, ...more] = problemsOf(withAudits(audits));
		expect(problem?.path).toBe(path);
		expect(more).toEqual([]);
	});
});
