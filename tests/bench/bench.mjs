// Measures the command side by side with its floor, all in one run: ratios count, milliseconds depend on the machine.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const command = join(root, 'dist/swap-audit.js');
const sheet = join(root, 'demo/half-finished.sheet.json');
const unboosted = join(root, 'demo/trailer-hauler.sheet.json');
const runs = 30;
const folder = mkdtempSync(join(tmpdir(), 'swap-audit-bench-'));

function time(args, options = {}) {
	const start = performance.now();
	const { status } = spawnSync(process.execPath, args, { stdio: ['pipe', 'ignore', 'ignore'], ...options });
	if (status !== 0) throw new Error(`${args.join(' ')}: status ${status}`);
	return performance.now() - start;
}

/** Median and 95th percentile of each, taken in turn so that a busy moment hits all alike. */
function compare(cases) {
	const times = cases.map(() => []);
	for (let run = 0; run < runs; run++) for (const [index, { args }] of cases.entries()) times[index].push(time(args));
	const at = (list, share) => [...list].sort((a, b) => a - b)[Math.floor(share * (list.length - 1))];
	return times.map(list => ({ median: at(list, 0.5), p95: at(list, 0.95) }));
}

const cases = [
	{ name: 'node -e 0', args: ['-e', '0'] },
	{ name: '--version', args: [command, '--version'] },
	{ name: '--help', args: [command, '--help'] },
	{ name: 'audit, boosted, 400 draws', args: [command, 'audit', sheet] },
	{ name: 'audit, boosted, no draws', args: [command, 'audit', sheet, '--draws', '0'] },
	{ name: 'audit, unboosted, 400 draws', args: [command, 'audit', unboosted] },
];
const measured = compare(cases);
console.log(
	`${'what'.padEnd(32)}${'median'.padStart(9)}${'p95'.padStart(9)}${'x node'.padStart(9)}   (${runs} runs, ms)`,
);
for (const [index, { name }] of cases.entries()) {
	const { median, p95 } = measured[index];
	console.log(
		`${name.padEnd(32)}${median.toFixed(0).padStart(9)}${p95.toFixed(0).padStart(9)}${(median / measured[0].median).toFixed(2).padStart(9)}`,
	);
}

for (const [name, path] of [
	['unboosted', unboosted],
	['boosted', sheet],
]) {
	const count = 1000;
	const lines = join(folder, 'lines');
	writeFileSync(lines, `${JSON.stringify(JSON.parse(readFileSync(path, 'utf8')))}\n`.repeat(count));
	const parse = `for (const l of require('fs').readFileSync('${lines}', 'utf8').trim().split('\\n')) JSON.parse(l)`;
	const alone = time(['-e', parse]);
	const start = performance.now();
	spawnSync(process.execPath, [command, 'audit', '--lines'], {
		input: readFileSync(lines),
		stdio: ['pipe', 'ignore', 'ignore'],
		maxBuffer: 1e9,
	});
	const all = performance.now() - start;
	console.log(
		`${`audit --lines, ${name}`.padEnd(32)}${(all / count).toFixed(2).padStart(9)} ms a sheet; JSON.parse of the same lines ${(alone / count).toFixed(2)}`,
	);
}
rmSync(folder, { recursive: true, force: true });
console.log();
await import('./key-to-frame.mjs');
