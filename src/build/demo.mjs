// Prints the first page of a demo build's audit; with --write makes every file of demo/ anew from its sheets.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** The day on the demo's audits: they must not change with the calendar. */
const day = '2026-04-01';

/** What README shows: the demo build, a question by its name, an answer and what it moves, the audit, a line of it. */
const session = [
	{ keys: [], seconds: 4 },
	{ keys: ['\u001b[B', '\r'], seconds: 4 },
	{ keys: ['\u0007', ...'ignition.gap'], seconds: 2 },
	{ keys: ['\r'], seconds: 3 },
	{ keys: [...'30 thou'], seconds: 3 },
	{ keys: ['\r'], seconds: 5 },
	{ keys: ['\u0014'], seconds: 6 },
	{ keys: ['\r'], seconds: 7 },
];

function command(...args) {
	const options = { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] };
	const done = spawnSync(process.execPath, ['dist/swap-audit.js', ...args, '--date', day], options);
	if (done.status !== 0) process.exit(done.status ?? 1);
}

if (process.argv.includes('--write')) {
	for (const name of readdirSync(`${root}demo`).filter(file => file.endsWith('.sheet.json'))) {
		const stem = `demo/${name.replace(/\.sheet\.json$/, '')}`;
		if (existsSync(`${root}${stem}.log.csv`))
			for (const ending of ['md', 'html', 'json'])
				command('log', `demo/${name}`, `${stem}.log.csv`, '--out', `${stem}.log.${ending}`);
		const judge = name.startsWith('after') ? 'recheck' : 'audit';
		for (const ending of ['md', 'html', 'json', 'csv']) {
			command(judge, `demo/${name}`, '--out', `${stem}.audit.${ending}`, '--no-record');
			if (readFileSync(`${root}demo/${name}`, 'utf8').includes('"plugs"'))
				command('pins', `demo/${name}`, '--out', `${stem}.pins.${ending}`);
		}
	}
	const { recordMovie } = await import('./screens.mjs');
	await recordMovie(root, 'recording', session);
} else {
	const sheet = 'demo/half-finished.sheet.json';
	const options = { cwd: root, stdio: ['ignore', 'pipe', 'inherit'], encoding: 'utf8' };
	const { status, stdout } = spawnSync(
		process.execPath,
		['dist/swap-audit.js', 'audit', sheet, '--date', day],
		options,
	);
	if (status !== 0) process.exit(status ?? 1);
	const [page] = stdout.split('\n## ');
	const color = process.stdout.isTTY && !process.env.NO_COLOR && process.env.TERM !== 'dumb';
	console.log(
		color ? page.replace(/\*\*(.+?)\*\*/gs, '\u001b[1m$1\u001b[22m').replace(/^#.*/, '\u001b[1;36m$&\u001b[0m') : page,
	);
	console.log(`The rest: demo/half-finished.audit.html in a browser, or node dist/swap-audit.js audit ${sheet}`);
}
