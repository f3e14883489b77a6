// `audit --lines` on streams of sheets: time a line beside JSON.parse of the same lines, and the memory it takes.
import { spawnSync } from 'node:child_process';
import { closeSync, openSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { command, inTurn, median, root, table } from './measure.mjs';

const count = Number(process.env.LINES ?? 2000);
const tellMemory = 'data:text/javascript,process.on("exit",()=>console.error("kB",process.resourceUsage().maxRSS))';

/** Runs node on a file as its input: milliseconds, and the most memory it held, MB. */
function run(args, input) {
	const file = openSync(input);
	const start = performance.now();
	const { status, stderr } = spawnSync(process.execPath, ['--import', tellMemory, ...args], {
		stdio: [file, 'ignore', 'pipe'],
		encoding: 'utf8',
	});
	const ms = performance.now() - start;
	closeSync(file);
	if (status !== 0) throw new Error(`${args.join(' ')}: status ${status}\n${stderr}`);
	return { ms, peak: Number(/kB (\d+)/.exec(stderr)[1]) / 1000 };
}

export async function lines(sheets, folder) {
	for (const build of ['unboosted', 'boosted']) {
		const [all, one] = ['all', 'one'].map(name => join(folder, name));
		const made = spawnSync(process.execPath, [sheets, build, String(count)], {
			cwd: root,
			encoding: 'utf8',
			maxBuffer: 2 ** 30,
		});
		if (made.status !== 0) throw new Error(made.stderr);
		writeFileSync(all, made.stdout);
		writeFileSync(one, made.stdout.slice(0, made.stdout.indexOf('\n') + 1));
		const parse = `for (const l of require('fs').readFileSync(0, 'utf8').trim().split('\\n')) JSON.parse(l)`;
		const peaks = [];
		// What starting takes, and the first line, is taken away.
		const each = args => {
			const start = run(args, one).ms;
			const { ms, peak } = run(args, all);
			peaks.push(peak);
			return (ms - start) / (count - 1);
		};
		table(
			`a line, ${build}, another build each time`,
			inTurn(3, {
				'JSON.parse of the lines': () => each(['-e', parse]),
				'audit --lines': () => each([command, 'audit', '--lines']),
			}),
			3,
		);
		console.log(
			`${count} lines; the most memory held: ${median(peaks.filter((_, index) => index % 2 === 1)).toFixed(0)} MB`,
		);
	}
}
