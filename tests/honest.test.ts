import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

// What would make a test pass that proves nothing. Tests that are left out (.only, .skip) are the linter's: .biome.json.

const folder = fileURLToPath(new URL('.', import.meta.url));
/** All but the bench and the runner of mutants, where time is what is reported. */
const files = (readdirSync(folder, { recursive: true }) as string[]).filter(
	file => /\.(?:tsx?|mjs)$/.test(file) && !/^(?:bench|mutation)\b/.test(file),
);

/** Each file that holds it, except those that have a reason to. */
const holding = (what: RegExp, but: readonly string[] = []) =>
	files.filter(
		file => file !== 'honest.test.ts' && !but.includes(file) && what.test(readFileSync(`${folder}${file}`, 'utf8')),
	);

test('the files are found', () => {
	expect(files.length).toBeGreaterThan(150);
});

test('none waits for a time to pass', () => {
	// A terminal is looked at again and again until it shows what is waited for; a log command is struck at a moment by chance.
	const waiting = ['support/terminal.ts', 'packed/packed.mjs', 'durability/log-applied.test.ts'];
	expect(holding(/\bsetTimeout\b|\bsetInterval\b|timers\/promises|\bsleep\(/, waiting)).toEqual([]);
});

test('none rests on chance that cannot be repeated', () => {
	expect(holding(/\bMath\.random\b|\brandomUUID\b|\brandomBytes\b|\bgetRandomValues\b/)).toEqual([]);
	const unseeded = files.filter(file =>
		[...readFileSync(`${folder}${file}`, 'utf8').matchAll(/\bfc\.assert\(/g)].some(
			({ index, input }) => !/\bseed(?:ed)?\b/.test(endOfCall(input, index)),
		),
	);
	expect(unseeded).toEqual([]);
});

/** The text of a call from its name to its closing bracket. */
function endOfCall(text: string, from: number): string {
	let depth = 0;
	for (let at = text.indexOf('(', from); at < text.length; at++) {
		if (text[at] === '(') depth++;
		if (text[at] === ')' && --depth === 0) return text.slice(from, at);
	}
	return text.slice(from);
}

test('none judges by the clock', () => {
	// The first two print times, the others draw the moment of a kill or a save.
	const telling = [
		...['hostile/expressions.test.ts', 'hostile/broken-at-the-command.test.ts'],
		...['durability/kills.test.ts', 'durability/log-applied.test.ts'],
	];
	expect(holding(/\bperformance\.now\b|\bhrtime\b/, telling)).toEqual([]);
	expect(holding(/expect\([^\n]*(?:performance\.now|Date\.now|hrtime|elapsed)/)).toEqual([]);
});
