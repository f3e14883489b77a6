import { mkdirSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { writeSheet } from '../../src/sheet/write.ts';
import { counts, seed } from '../counts.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';
import { buildSheet } from '../support/model.ts';

// Folders given as a rule pack: good and spoilt files, links in circles and to devices, too much of everything. The command
// ends with a status of its own, prints nothing that a terminal obeys, and leaves the sheet as it was.

const good = readFileSync(fileURLToPath(new URL('../../demo/packs/invented-family.yaml', import.meta.url)), 'utf8');
const obeyed = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

const part = fc.constantFrom(
	'a',
	'fuel',
	'Ω',
	'a b',
	"it's",
	'-x',
	'$(x)',
	'..x',
	'x'.repeat(200),
	'\u001b[2J',
	'\u202e',
);
const file = fc.tuple(fc.array(part, { maxLength: 3 }), part, fc.constantFrom('.yaml', '.yml', '.YAML', '.md', ''));

/** A place of the good pack, and what is put there instead of some of it. */
const edit = fc.record({
	at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
	length: fc.constantFrom(0, 0, 1, 40, 400),
	by: fc.oneof(
		fc.constantFrom(
			'"\\e]0;x\\a"',
			'"\\u202E"',
			'\u0000',
			'\u001b[31m',
			'&a [*a, *a]',
			'*a',
			'{'.repeat(3000),
			'\n- '.repeat(300),
		),
		fc.constantFrom(
			'!!js/function x',
			'<<: *x',
			'1e999',
			'__proto__: {x: 1}\n',
			'topic: x\n',
			'\ufeff',
			'\ud800',
			'\r\r',
		),
		fc.string({ maxLength: 12 }),
	),
});
const content = fc.oneof(
	fc.constant(['as it is', []] as const),
	fc.tuple(fc.constant('edited'), fc.array(edit, { minLength: 1, maxLength: 3 })),
	fc.tuple(fc.constantFrom('empty', 'bytes', 'long', 'hole', 'folder', 'many', 'deep'), fc.constant([])),
	fc.tuple(
		fc.constantFrom('link up', 'link to itself', 'link to a device', 'link to nothing', 'link to the sheet'),
		fc.constant([]),
	),
);

type Edit = typeof edit extends fc.Arbitrary<infer One> ? One : never;

const edited = (text: string, { at, length, by }: Edit): string => {
	const place = Math.floor(at * text.length);
	return text.slice(0, place) + by + text.slice(place + length);
};

/** Puts one thing into the pack; what the disk refuses (a name twice, a name too long) is left out. */
function put(path: string, [kind, edits]: readonly [string, readonly Edit[]], sheet: string): void {
	const many = (count: number, name: (n: number) => string) => {
		mkdirSync(path, { recursive: true });
		for (let n = 0; n < count; n++) writeFileSync(join(path, name(n)), good);
	};
	const make: Readonly<Record<string, () => void>> = {
		'as it is': () => writeFileSync(path, good),
		edited: () => writeFileSync(path, edits.reduce(edited, good)),
		empty: () => writeFileSync(path, ''),
		bytes: () => writeFileSync(path, Buffer.from([0xff, 0xfe, 0, 0xd8, 0xc3, 0x28])),
		long: () => writeFileSync(path, `${good}${'#'.repeat(1_200_000)}`),
		// A file that says to be larger than any memory, and holds nothing.
		hole: () => {
			writeFileSync(path, '');
			truncateSync(path, 20 * 2 ** 30);
		},
		folder: () => mkdirSync(path),
		many: () => many(502, n => `${n}.yaml`),
		deep: () => mkdirSync(join(path, ...Array(12).fill('d')), { recursive: true }),
		'link up': () => symlinkSync('..', path),
		'link to itself': () => symlinkSync(path, path),
		'link to a device': () => symlinkSync('/dev/zero', path),
		'link to nothing': () => symlinkSync('nothing', path),
		'link to the sheet': () => symlinkSync(sheet, path),
	};
	try {
		mkdirSync(dirname(path), { recursive: true });
		make[kind]!();
	} catch (error) {
		if (!(error instanceof Error && 'code' in error)) throw error;
	}
}

test('whatever a rule pack holds, the command ends by itself and the sheet is as it was', {
	timeout: 3_600_000,
}, () => {
	const text = writeSheet(buildSheet('boosted'));
	const ends = new Map<number | null, number>();
	fc.assert(
		fc.property(fc.array(fc.tuple(file, content), { minLength: 1, maxLength: 5 }), fc.boolean(), (files, one) => {
			const home = temporaryFolder();
			const sheet = join(home, 'mule.json');
			writeFileSync(sheet, text);
			const pack = join(home, 'pack');
			mkdirSync(pack);
			const paths = files.map(([[folders, name, ending], what]) => {
				const path = join(pack, ...folders, `${name}${ending}`);
				put(path, what, sheet);
				return path;
			});
			// The folder, or the first thing in it by its own name.
			const given = one ? paths[0]! : pack;
			for (const args of [
				['rules', 'list', given],
				['audit', sheet, '--rules', given, '--draws', '0', '--date', '2026-05-01'],
			]) {
				const { status, out, err } = runCommand(args, { home });
				const what = `${args[0]} ${JSON.stringify(files)}: ${err}`;
				expect([0, 2], what).toContain(status);
				expect(obeyed.exec(out), what).toBeNull();
				expect(obeyed.exec(err), what).toBeNull();
				if (status === 2) expect(err.length, what).toBeGreaterThan(20);
				expect(err, what).not.toContain('    at ');
				expect(readFileSync(sheet, 'utf8')).toBe(text);
				ends.set(status, (ends.get(status) ?? 0) + 1);
			}
		}),
		{ seed, numRuns: counts.packs },
	);
	console.info(`${counts.packs} packs, each listed and audited with: ${JSON.stringify(Object.fromEntries(ends))}`);
	// If all were taken, or none, this would prove little.
	expect(ends.get(0)).toBeGreaterThan(0);
	expect(ends.get(2)).toBeGreaterThan(0);
});
