// A log of 12 channels judged, beside the fastest general parser turning the same cells into numbers: node tests/bench/log.mjs [MB]

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parsers, timeOf as parseTime } from './csv-parsers.mjs';
import { builds, command } from './measure.mjs';
import { writeTable } from './table.mjs';

/** Tells the most memory that a program had, kB, as its last line on stderr. */
const tellMemory = `data:text/javascript,process.on('exit',()=>console.error(process.resourceUsage().maxRSS))`;

/** Seconds and MB of `swap-audit log` on a file. */
function judge(path) {
	const start = performance.now();
	const args = ['--import', tellMemory, command, 'log', builds.boosted, path, '--json', '--draws', '0'];
	const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', maxBuffer: 1e8 });
	if (status !== 0) throw new Error(stderr);
	return { seconds: (performance.now() - start) / 1000, memory: Number(stderr.trim().split('\n').at(-1)) / 1000 };
}

/** A log of so many megabytes, each side the best of two. */
export function benchLog(megabytes) {
	const folder = mkdtempSync(join(tmpdir(), 'swap-audit-log-'));
	const path = join(folder, 'drive.csv');
	writeTable(path, megabytes);
	const parsed = Math.min(...[1, 2].map(() => parseTime(parsers.udsv(12), path, 12)));
	const [first, second] = [judge(path), judge(path)];
	const judged = Math.min(first.seconds, second.seconds);
	const ratio = (judged / parsed).toFixed(2);
	const memory = Math.max(first.memory, second.memory).toFixed(0);
	console.log(
		`\nlog of ${megabytes} MB, 12 channels: the parser alone ${parsed.toFixed(2)} s; judged ${judged.toFixed(2)} s, ${ratio} times that, in ${memory} MB`,
	);
	rmSync(folder, { recursive: true });
}

if (process.argv[1] === import.meta.filename) benchLog(Number(process.argv[2] ?? 100));
