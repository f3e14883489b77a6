import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';

const demo = fileURLToPath(new URL('../../demo/', import.meta.url));
const sheets = readdirSync(demo).filter(name => name.endsWith('.sheet.json'));

/** Numbers to ten digits: the last ones may differ between versions of the engine that runs this. */
const rounded = (text: string): unknown =>
	JSON.parse(text, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(10)) : value));

describe('the audits in demo/ are what the program writes (else: npm run demo -- --write)', () => {
	test.each(sheets.flatMap(sheet => ['md', 'html', 'csv', 'json'].map(ending => [sheet, ending] as const)))(
		'%s as .%s',
		(sheet, ending) => {
			const folder = temporaryFolder();
			const out = sheet.replace('.sheet.json', `.audit.${ending}`);
			const judge = sheet.startsWith('after') ? 'recheck' : 'audit';
			const { status, err } = runCommand([
				judge,
				join(demo, sheet),
				'--out',
				join(folder, out),
				'--no-record',
				'--date',
				'2026-04-01',
			]);
			expect(err).toBe('');
			expect(status).toBe(0);
			for (const name of readdirSync(folder)) {
				const [made, kept] = [join(folder, name), join(demo, name)].map(path => readFileSync(path, 'utf8')) as [
					string,
					string,
				];
				if (ending === 'json') expect(rounded(made)).toEqual(rounded(kept));
				else expect(made, name).toBe(kept);
			}
		},
	);
});

test('the same bytes whatever the place, the language and the time zone', () => {
	const path = join(demo, sheets[0]!);
	const run = (env: Record<string, string>) => runCommand(['audit', path, '--date', '2026-04-01'], { env }).out;
	const first = run({ TZ: 'UTC', LANG: 'C' });
	expect(first.length).toBeGreaterThan(10_000);
	expect(run({ TZ: 'Asia/Tokyo', LANG: 'de_DE.UTF-8', LC_ALL: 'tr_TR.UTF-8', COLUMNS: '40' })).toBe(first);
});
