import { describe, expect, test } from 'vitest';
import { runLines } from '../../src/plain/face.ts';
import type { LogFace } from '../../src/plain/log.ts';
import type { Window } from '../../src/plain/window.ts';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { testModel } from '../support/model.ts';

/** What the line face says of these lines, without a process. */
async function said(typed: readonly string[], width: number, window: Window | null): Promise<string[]> {
	const out: string[] = [];
	const face = {
		lines: (async function* () {
			yield* typed;
		})(),
		say: (line: string) => out.push(line),
		mark: () => {},
		save: () => {},
		width,
		window,
		logs: {} as LogFace,
	};
	await runLines(testModel(), emptySheet('mule'), 'quick', null, face);
	return out;
}

describe('how long it takes yet', () => {
	test('is in the line of each topic, and gets less', async () => {
		const out = (await said(['-', '-', '-', '-', '-', '-', '-'], 80, null)).join('\n');
		const left = [...out.matchAll(/\(\d+ of \d+, about (\d+) minutes left\)/g)].map(([, minutes]) => Number(minutes));
		expect(left.length).toBeGreaterThan(2);
		expect(left.at(-1)!).toBeLessThan(left[0]!);
	});

	test('at 28 columns no count is cut, and every line fits', async () => {
		const out = await said(['-', '-', '-', '-', '-', '-'], 28, { columns: 28, rows: 20 });
		for (const line of out) expect(line.length).toBeLessThanOrEqual(28);
		const counts = out.filter(line => /\(\d+ of \d+,/.test(line));
		expect(counts.length).toBe(out.filter(line => line.startsWith('--')).length);
		expect(out.join('\n').match(/of \d+,\s+about \d+ minutes\s+left\)/g)?.length).toBe(counts.length);
	});
});

test('a window of 18 x 6 is said to be too small; one that is large enough, and a pipe, hear nothing of it', async () => {
	expect((await said([], 18, { columns: 18, rows: 6 })).join(' ')).toMatch(
		/^Needs more room: +this window is +18 x 6, 24 x 8 +is the least\./,
	);
	for (const window of [{ columns: 24, rows: 8 }, null])
		expect((await said([], 24, window)).join('\n')).not.toContain('more room');
});
