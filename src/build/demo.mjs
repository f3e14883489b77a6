// Prints the audit of the first demo build; with --write makes every file of demo/ anew from its sheets.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** The day on the demo's audits: they must not change with the calendar. */
const day = '2026-04-01';

function command(...args) {
	const options = { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] };
	const done = spawnSync(process.execPath, ['dist/swap-audit.js', ...args, '--date', day], options);
	if (done.status !== 0) process.exit(done.status ?? 1);
}

if (process.argv.includes('--write')) {
	for (const name of readdirSync(`${root}demo`).filter(file => file.endsWith('.sheet.json'))) {
		const stem = `demo/${name.replace(/\.sheet\.json$/, '')}`;
		const judge = name.startsWith('after') ? 'recheck' : 'audit';
		for (const ending of ['md', 'html', 'json', 'csv']) {
			command(judge, `demo/${name}`, '--out', `${stem}.audit.${ending}`, '--no-record');
			if (readFileSync(`${root}demo/${name}`, 'utf8').includes('"plugs"'))
				command('pins', `demo/${name}`, '--out', `${stem}.pins.${ending}`);
		}
	}
	const { recordScreens } = await import('./screens.mjs');
	await recordScreens(root, [
		{ name: 'screen-opening', keys: [] },
		{ name: 'screen-question', keys: ['\u001b[B', '\r'] },
		{ name: 'screen-audit', keys: ['\u0014'] },
	]);
} else command('audit', 'demo/half-finished.sheet.json');
