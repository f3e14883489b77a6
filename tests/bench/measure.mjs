// How everything here is measured: side by side in one run, taken in turn, so that a busy moment hits all alike.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));
export const command = `${root}dist/swap-audit.js`;
export const builds = {
	boosted: `${root}demo/half-finished.sheet.json`,
	unboosted: `${root}demo/trailer-hauler.sheet.json`,
};

/** Milliseconds that a program takes from start to end, its output thrown away. */
export function timeOf(args, { program = process.execPath, ...options } = {}) {
	const start = performance.now();
	const { status, error } = spawnSync(program, args, { stdio: ['pipe', 'ignore', 'ignore'], ...options });
	if (status !== 0) throw error ?? new Error(`${args.join(' ')}: status ${status}`);
	return performance.now() - start;
}

const share = (times, part) => [...times].sort((a, b) => a - b)[Math.floor(part * (times.length - 1))];
export const median = times => share(times, 0.5);
export const p95 = times => share(times, 0.95);

/** Runs each case once a round: name to function, name to milliseconds. */
export function inTurn(rounds, cases) {
	const times = Object.fromEntries(Object.keys(cases).map(name => [name, []]));
	for (let round = 0; round < rounds; round++) {
		for (const [name, run] of Object.entries(cases)) {
			const start = performance.now();
			const told = run();
			times[name].push(typeof told === 'number' ? told : performance.now() - start);
		}
	}
	return times;
}

/** A table of what was measured, each beside the first. */
export function table(title, times, digits = 0) {
	const [floor] = Object.values(times);
	console.log(`\n${title.padEnd(46)}${'median'.padStart(9)}${'p95'.padStart(9)}${'x first'.padStart(9)}   ms`);
	for (const [name, list] of Object.entries(times)) {
		const cells = [median(list).toFixed(digits), p95(list).toFixed(digits), (median(list) / median(floor)).toFixed(2)];
		console.log(name.padEnd(46) + cells.map(cell => cell.padStart(9)).join(''));
	}
}
