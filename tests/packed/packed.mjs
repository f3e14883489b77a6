// Installs the packed command where nothing else is and tries it, as somebody does who got it from a registry.
// Outside `npm test`, because the install may ask the network for what is not bundled.
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { spawn } from '@lydell/node-pty';

const root = fileURLToPath(new URL('../..', import.meta.url));
const place = mkdtempSync(join(tmpdir(), 'swap-audit-packed-'));
const home = join(place, 'home');
mkdirSync(home);
const env = { PATH: process.env.PATH, HOME: home, XDG_DATA_HOME: home, XDG_CONFIG_HOME: home, TERM: 'xterm-256color' };
const command = join(place, 'bin', 'swap-audit');
/** The program takes 1.46 MB; help and what reads a log are scripts of their own, 62 and 82 kB, which start sooner for it. */
const codeAtMost = 1_650_000;

function must(fact, words) {
	if (!fact) throw new Error(words);
	console.log(`ok: ${words}`);
}

const npm = (...args) =>
	execFileSync('npm', args, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
const run = (...args) => execFileSync(command, args, { cwd: home, env, encoding: 'utf8' });

/** Opens the interview on a new sheet in a pseudo-terminal; gives true when it shows a question. */
function opensOn(question) {
	return new Promise((resolve, reject) => {
		const pty = spawn(command, ['interview', './new.json'], { cols: 80, rows: 24, cwd: home, env });
		let seen = '';
		const late = setTimeout(() => {
			pty.kill();
			reject(new Error(`never saw a question, but ${JSON.stringify(seen.slice(-400))}`));
		}, 20_000);
		pty.onData(data => {
			seen += data;
			if (!seen.includes(question)) return;
			clearTimeout(late);
			pty.onExit(() => resolve(true));
			pty.kill('SIGTERM');
		});
	});
}

try {
	const [{ filename, files, size }] = JSON.parse(
		npm('pack', '--json', '--ignore-scripts', '--pack-destination', place),
	);
	const [again] = JSON.parse(npm('pack', '--json', '--ignore-scripts', '--dry-run'));
	npm('run', 'build');
	const [rebuilt] = JSON.parse(npm('pack', '--json', '--ignore-scripts', '--dry-run'));
	must(again.shasum === rebuilt.shasum, `the same bytes from another build: ${rebuilt.shasum}`);
	const code = files.filter(({ path }) => path.endsWith('.js')).reduce((sum, file) => sum + file.size, 0);
	must(code <= codeAtMost, `${code} bytes of code in a package of ${size}`);
	const strange = files.filter(
		({ path }) =>
			!/^(dist\/.*|demo\/.*\.(md|svg|sheet\.json|log\.csv|yaml)|rules\/(README\.md|words\.yaml)|package\.json|[A-Z]+\.md|LICENSE)$/.test(
				path,
			),
	);
	must(
		strange.length === 0,
		`nothing in it but dist, the papers and the demo ${strange.map(({ path }) => path).join(' ')}`,
	);
	npm('install', '--global', '--prefix', place, '--prefer-offline', '--no-audit', '--no-fund', join(place, filename));
	const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
	must(run('--version') === `${version}\n`, `--version says ${version}`);
	copyFileSync(join(root, 'demo/trailer-hauler.sheet.json'), join(home, 'hauler.json'));
	must(run('audit', 'hauler.json').startsWith('# Swap audit'), 'an audit of a demo sheet');
	must(run('rules', 'test').endsWith(', 0 wrong\n'), 'the rules hold their examples');
	must(run('completion', 'bash').includes('complete -F'), 'a completion script');
	must(
		readFileSync(join(place, 'share/man/man1/swap-audit.1'), 'utf8').startsWith('.Dd'),
		'the manual page where man looks',
	);
	const [first] = run('questions').split('\n');
	// Its beginning: the rest may be wrapped.
	const question = first.replace(/^\S+\s+/, '').slice(0, 24);
	must(await opensOn(question), `the interview opens on "${question}..."`);
} finally {
	rmSync(place, { recursive: true, force: true });
}
