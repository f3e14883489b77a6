// A log of 12 channels judged, beside the fastest general parser turning the same cells into numbers: node tests/bench/log.mjs [MB]

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parsers, timeOf as parseTime } from './csv-parsers.mjs';
import { builds, command } from './measure.mjs';
import { writeTable } from './table.mjs';

/** Tells the most memory that a program had, kB, and its time on the processor, us, as its last line on stderr. */
const tellUse = `data:text/javascript,process.on('exit',()=>{const u=process.resourceUsage();console.error(u.maxRSS,u.userCPUTime+u.systemCPUTime)})`;

/** Seconds, seconds of the processor and MB of `swap-audit log` on a file. */
function judge(path) {
	const start = performance.now();
	const args = ['--import', tellUse, command, 'log', builds.boosted, path, '--json', '--draws', '0'];
	const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', maxBuffer: 1e8 });
	if (status !== 0) throw new Error(stderr);
	const [memory, cpu] = stderr.trim().split('\n').at(-1).split(' ').map(Number);
	return { seconds: (performance.now() - start) / 1000, cpu: cpu / 1e6, memory: memory / 1000 };
}

/** The same of the fastest general parser. */
function parse(path) {
	const before = process.cpuUsage();
	const seconds = parseTime(parsers.udsv(12), path, 12);
	const { user, system } = process.cpuUsage(before);
	return { seconds, cpu: (user + system) / 1e6 };
}

/** A log of so many megabytes, each side the best of three, taken by turns. */
export function benchLog(megabytes) {
	const folder = mkdtempSync(join(tmpdir(), 'swap-audit-log-'));
	const path = join(folder, 'drive.csv');
	writeTable(path, megabytes);
	const rounds = [1, 2, 3].map(() => ({ parsed: parse(path), judged: judge(path) }));
	const least = (side, what) => Math.min(...rounds.map(round => round[side][what]));
	for (const [what, title] of [
		['seconds', ''],
		['cpu', ' of the processor'],
	]) {
		const [parsed, judged] = [least('parsed', what), least('judged', what)];
		console.log(
			`log of ${megabytes} MB, 12 channels: the parser alone ${parsed.toFixed(2)} s${title}; judged ${judged.toFixed(2)} s, ${(judged / parsed).toFixed(2)} times that`,
		);
	}
	console.log(`most memory ${Math.max(...rounds.map(({ judged }) => judged.memory)).toFixed(0)} MB`);
	rmSync(folder, { recursive: true });
}

if (process.argv[1] === import.meta.filename) benchLog(Number(process.argv[2] ?? 100));
