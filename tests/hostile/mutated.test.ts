import fc from 'fast-check';
import { expect, test } from 'vitest';
import { recordOfLog, withLog } from '../../src/audit/log-record.ts';
import { isForPerson } from '../../src/cli/process/exit.ts';
import { renderAudit } from '../../src/report/render.ts';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { writeSheet } from '../../src/sheet/write.ts';
import { counts, seed } from '../counts.ts';
import { audited, brokenBuild } from '../support/audited.ts';
import { loggedReport } from '../support/logged-report.ts';
import { testModel } from '../support/model.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

// A sheet with answers of every kind, plugs and a log, parts of which are something else than they were. It is refused
// with a place, or judged to the last line of its audit: nothing else comes out.

/** The broken build with two halves of a plug and a log whose answers were taken. */
function whole(): unknown {
	const sheet = brokenBuild();
	const report = loggedReport(simulateDrive({ faults: { railFalls: 60_000 }, cruise: 20 }), sheet);
	const plugs = ['engine', 'car'].map(half => ({
		plug: 'main',
		half,
		pins: ['1', '2', '3'].map(pin => ({ pin, wire: 'RD', circuit: 'keep-alive feed', gauge: 18, note: 'cut' })),
	}));
	const logged = withLog({ ...sheet, plugs } as never, recordOfLog(report, sheet, {}));
	return JSON.parse(writeSheet(logged));
}

const odd: readonly unknown[] = [
	null,
	true,
	0,
	-1,
	1e308,
	5e-324,
	12.5,
	'',
	'not-known',
	'none',
	'\u001b[2J\u202e',
	'2026-02-30',
	'psi',
	'x'.repeat(5000),
	[],
	[[]],
	{},
	{ value: 1 },
	{ known: 'not-known' },
	Object.fromEntries([['__proto__', 1]]),
];

const change = fc.record({
	at: fc.nat(1_000_000),
	with: fc.constantFrom(...odd),
	way: fc.constantFrom('put', 'put', 'take away', 'double', 'rename', 'take from elsewhere'),
	from: fc.nat(1_000_000),
});

type Change = typeof change extends fc.Arbitrary<infer One> ? One : never;
type Branch = Record<string, unknown> | unknown[];

/** Every place of a tree: a list or mapping, and a key in it. */
function placesOf(tree: unknown, places: [Branch, string][] = []): [Branch, string][] {
	if (typeof tree !== 'object' || tree === null) return places;
	for (const [key, inside] of Object.entries(tree)) {
		places.push([tree as Branch, key]);
		placesOf(inside, places);
	}
	return places;
}

function mutated(tree: unknown, { at, from, way, with: other }: Change): unknown {
	const places = placesOf(tree);
	if (places.length === 0) return tree;
	const [branch, key] = places[at % places.length]! as [Record<string, unknown>, string];
	const [elsewhere, other_key] = places[from % places.length]! as [Record<string, unknown>, string];
	const copy = <T>(value: T): T => structuredClone(value);
	if (way === 'put') branch[key] = copy(other);
	else if (way === 'take from elsewhere') branch[key] = copy(elsewhere[other_key]);
	else if (way === 'double' && Array.isArray(branch)) branch.splice(Number(key), 0, copy(branch[Number(key)]));
	else if (way === 'rename' && !Array.isArray(branch)) {
		branch[`${key}x`] = branch[key];
		delete branch[key];
	} else if (Array.isArray(branch)) branch.splice(Number(key), 1);
	else delete branch[key];
	return tree;
}

test('a sheet of which anything is something else is refused with its place, or judged', { timeout: 3_600_000 }, () => {
	const { questions } = testModel().rulebook;
	const text = JSON.stringify(whole());
	checkSheet(parseSheet(text), questions);
	let judged = 0;
	fc.assert(
		fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), changes => {
			const changed = JSON.stringify(changes.reduce(mutated, JSON.parse(text)));
			let sheet: ReturnType<typeof checkSheet>['sheet'];
			try {
				({ sheet } = checkSheet(parseSheet(changed), questions));
			} catch (error) {
				if (!isForPerson(error)) throw error;
				expect(error.message).toMatch(/found .*; accepted: ./s);
				return;
			}
			judged++;
			const audit = audited(sheet);
			expect(renderAudit(audit, 'md', 'x').text.length).toBeGreaterThan(200);
			expect(JSON.parse(renderAudit(audit, 'json', 'x').text).findings.length).toBeGreaterThan(0);
			// What is saved next is read as it was.
			expect(writeSheet(checkSheet(parseSheet(writeSheet(sheet)), questions).sheet)).toBe(writeSheet(sheet));
		}),
		{ seed, numRuns: counts.mutatedSheets },
	);
	console.info(`${judged} of ${counts.mutatedSheets} mutated sheets judged, the others refused`);
	// If all were refused, or none, this would prove little.
	expect(judged).toBeGreaterThan(counts.mutatedSheets / 20);
	expect(judged).toBeLessThan(counts.mutatedSheets * 0.9);
	expect(Object.keys(Object.prototype)).toEqual([]);
});
