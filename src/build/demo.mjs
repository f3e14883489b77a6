// Prints the audit of the first demo build; with --write makes every file of demo/ anew from its sheets.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** The day on the demo's audits: they must not change with the calendar. */
const day = '2026-04-01';

function command(...args) {
	const done = spawnSync(process.execPath, ['dist/swap-audit.js', ...args, '--date', day], {
		cwd: root,
		stdio: ['ignore', 'inherit', 'inherit'],
	});
	if (done.status !== 0) process.exit(done.status ?? 1);
}

if (process.argv.includes('--write')) {
	for (const name of readdirSync(`${root}demo`).filter(file => file.endsWith('.sheet.json'))) {
		const stem = `demo/${name.replace(/\.sheet\.json$/, '')}`;
		for (const ending of ['md', 'html', 'json', 'csv']) {
			command(
				name.startsWith('after') ? 'recheck' : 'audit',
				`demo/${name}`,
				'--out',
				`${stem}.audit.${ending}`,
				'--no-record',
			);
		}
	}
} else command('audit', 'demo/half-finished.sheet.json');
