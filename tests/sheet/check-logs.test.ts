import { describe, expect, test } from 'vitest';
import { writeSheet } from '../../src/sheet/write.ts';
import { changed, opened, problemsOf } from './problems.ts';

const record = {
	name: 'drive.csv',
	sha256: 'a'.repeat(64),
	date: '2026-05-01',
	channels: [{ channel: 'engine_speed', header: 'RPM', unit: 'rpm', by: 'header', lag: null }],
	quantities: {
		'log.idle_speed': { value: 780, unit: 'rpm', low: 770, high: 790, missing: [] },
		'log.boost_peak': [{ pull: 1, value: null, unit: 'Pa', low: null, high: null, missing: ['manifold_pressure'] }],
	},
	points: [{ pull: 1, gear: null, points: [{ speed: 3000, time: 9, channels: { lambda_1: [0.8, 0.01, 4] } }] }],
	answers: { 'boost.logged_peak': { value: 8, unit: 'psi', known: 'measured' } },
	fit: null,
	rests_on: { 'fuel.pressure': { known: 'not-known' } },
};

const withLogs = (logs: unknown) => changed(sheet => (sheet.logs = logs));

describe('the logs that a sheet keeps', () => {
	test('are taken, with keys that a later program may add, and come back as the same bytes', () => {
		const { sheet } = opened(withLogs([record, { ...record, more: 1 }]));
		expect(sheet.logs![1]).toMatchObject({ more: 1 });
		const text = writeSheet(sheet);
		expect(writeSheet(opened(text).sheet)).toBe(text);
		expect(text.split('\n').filter(line => line.includes('"drive.csv"'))).toHaveLength(2);
	});

	const [channel] = record.channels;
	test.each([
		['no list', {}, 'logs'],
		['null', null, 'logs'],
		['too many', new Array(21).fill(record), 'logs'],
		['a record that is none', [record, 7], 'logs[1]'],
		['a day that is none', [{ ...record, date: 'yesterday' }], 'logs[0].date'],
		['a hash that is none', [{ ...record, sha256: 'abc' }], 'logs[0].sha256'],
		['a channel without a header', [{ ...record, channels: [{ ...channel, header: 1 }] }], 'logs[0].channels'],
		['a lag as text', [{ ...record, channels: [{ ...channel, lag: '1' }] }], 'logs[0].channels'],
		['a figure that is none', [{ ...record, quantities: { 'log.idle_speed': 780 } }], 'logs[0].quantities'],
		[
			'a figure without a value',
			[{ ...record, quantities: { a: { unit: null, low: null, high: null, missing: [] } } }],
			'logs[0].quantities',
		],
		[
			'a point of two',
			[
				{
					...record,
					points: [{ pull: 1, gear: null, points: [{ speed: 1, time: 1, channels: { a: [1, 2] } }] }],
				},
			],
			'logs[0].points',
		],
		['answers that are a list', [{ ...record, answers: [] }], 'logs[0].answers'],
		['a fit as text', [{ ...record, fit: 'yes' }], 'logs[0].fit'],
		['no fit at all', [{ ...record, fit: undefined }], 'logs[0].fit'],
		['rests on a number', [{ ...record, rests_on: { a: 1 } }], 'logs[0].rests_on'],
	])('%s', (_, logs, path) => {
		expect(problemsOf(withLogs(logs)).map(problem => problem.path)).toEqual([path]);
	});
});
