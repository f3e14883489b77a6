import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isForPerson } from '../../src/cli/process/exit.ts';
import { judgeLog } from '../../src/cli/sheet/judge-log.ts';
import { renderLog } from '../../src/report/log/render.ts';
import { counts, seed } from '../counts.ts';
import { driveTable } from '../support/drive-table.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet, sha256, testModel } from '../support/model.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

// A recorded drive, spoilt in a few places. It is refused with one clear error, or judged to the end of its report.

const odd = fc.constantFrom(
	'1e999',
	'-1e308',
	'nan',
	'"',
	'""",',
	',,,,',
	';',
	'\t',
	'\n',
	'\r',
	'\n\n\n',
	'\u0000',
	'\u001b[2J',
	'\u202e',
	'#',
	'Time (s)',
	'Engine speed (rpm)',
	'Boost (psi)',
	'-40',
	'0',
	'99:99:99',
	'2026-02-30T25:00',
	'1,5',
	'on',
	'\ufeff',
	'x'.repeat(2000),
	',1'.repeat(2100),
);

const spoil = fc.record({
	at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
	to: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
	near: fc.boolean(),
	with: fc.oneof(odd, fc.string({ maxLength: 8 })),
	way: fc.constantFrom('put', 'cut', 'end', 'double lines', 'lose lines', 'swap lines', 'other cells'),
});

type Spoil = typeof spoil extends fc.Arbitrary<infer One> ? One : never;

function spoilt(text: string, { at, to, near, with: other, way }: Spoil): string {
	// The header is as likely to be hit as all the rest.
	const place = Math.floor(at * (near ? Math.min(400, text.length) : text.length));
	const lines = text.split('\n');
	const line = Math.floor(at * (near ? Math.min(3, lines.length) : lines.length));
	const count = Math.floor(to * 40);
	switch (way) {
		case 'put':
			return text.slice(0, place) + other + text.slice(place);
		case 'cut':
			return text.slice(0, place) + text.slice(place + count);
		case 'end':
			return text.slice(0, place);
		case 'double lines':
			return lines.toSpliced(line, 0, ...lines.slice(line, line + count)).join('\n');
		case 'lose lines':
			return lines.toSpliced(line, count).join('\n');
		case 'swap lines':
			return lines.toSpliced(Math.floor(to * lines.length), 0, lines[line]!).join('\n');
		default: {
			// One column, from a line on, is something else.
			const column = Math.floor(to * 12);
			const change = (row: string) =>
				row
					.split(',')
					.with(Math.min(column, row.split(',').length - 1), other)
					.join(',');
			return lines.map((row, index) => (index >= line ? change(row) : row)).join('\n');
		}
	}
}

test('a log spoilt anywhere is refused with one clear error, or judged', { timeout: 3_600_000 }, async () => {
	const model = testModel();
	const sheet = buildSheet('boosted');
	const table = driveTable(simulateDrive({ faults: {}, cruise: 10 }));
	const path = join(temporaryFolder(), 'drive.csv');
	let judged = 0;
	await fc.assert(
		fc.asyncProperty(fc.array(spoil, { minLength: 1, maxLength: 4 }), async spoils => {
			writeFileSync(path, spoils.reduce(spoilt, table));
			try {
				const said = { date: '2026-05-01', units: 'us' as const, draws: 0 };
				const report = await judgeLog(model, { sheet, warnings: [] }, path, { mappings: [], ignored: [] }, said);
				judged++;
				const { json } = report;
				expect(json.file.rows).toBeGreaterThan(0);
				for (const { value } of json.answers) if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
				expect(renderLog(report, 'json', '', sha256).text).not.toMatch(/[\u0000-\u0008\u001b\u202e]/);
				expect(renderLog(report, 'md', 'x', sha256).text).not.toMatch(/NaN|Infinity|undefined|\u001b|\u202e/);
			} catch (error) {
				if (!isForPerson(error)) throw error;
				expect(error.message).toMatch(/found .*; accepted: ./s);
			}
		}),
		{ seed, numRuns: counts.spoiltLogs },
	);
	console.info(`${judged} of ${counts.spoiltLogs} spoilt logs judged, the others refused`);
	// If all were refused, or none, this would prove little.
	expect(judged).toBeGreaterThan(counts.spoiltLogs / 4);
	expect(judged).toBeLessThan(counts.spoiltLogs);
});
