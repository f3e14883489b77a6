// From a key to its frame, in a real pseudo-terminal with the live figures on, beside a bare list in the same run.
// Ratios count; milliseconds depend on the machine.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { spawn } from '@lydell/node-pty';

const root = fileURLToPath(new URL('../../', import.meta.url));
const home = mkdtempSync(join(tmpdir(), 'swap-audit-keys-'));
const sheet = join(home, 'build.json');
/** The demo build at the question of the bore: a number, with much behind it. */
const demo = JSON.parse(readFileSync(join(root, 'demo/half-finished.sheet.json'), 'utf8'));
delete demo.answers.engine.stroke;
writeFileSync(sheet, JSON.stringify({ ...demo, draft: { id: 'engine.bore', text: '' } }));
const number = '3.78 in';
const keys = 49;
const wait = milliseconds => new Promise(resolve => setTimeout(resolve, milliseconds));

/** A program in a pseudo-terminal that tells when it drew. */
async function open(args) {
	const env = {
		PATH: process.env.PATH,
		TERM: 'xterm-256color',
		HOME: home,
		XDG_DATA_HOME: home,
		XDG_CONFIG_HOME: home,
	};
	const pty = spawn(process.execPath, args, { cols: 80, rows: 24, cwd: home, env });
	let bytes = '';
	let drawn = () => {};
	pty.onData(data => {
		bytes += data;
		drawn(data);
	});
	while (!bytes.includes('\u001b[?2004h')) await wait(5);
	await wait(1500);
	return {
		pty,
		bytes: () => bytes,
		/** Milliseconds from a key until a frame that shows `sign`. */
		async time(key, sign) {
			let seen = '';
			const start = performance.now();
			const shown = new Promise((resolve, reject) => {
				const late = setTimeout(
					() => reject(new Error(`no frame with ${JSON.stringify(sign)} in ${JSON.stringify(seen)}`)),
					5000,
				);
				drawn = data => {
					seen += data;
					if (!seen.includes(sign)) return;
					clearTimeout(late);
					resolve(performance.now() - start);
				};
			});
			pty.write(key);
			return shown;
		},
	};
}

/** Types a number again and again, each key waited for and the next one a little later. */
async function typing(program, empty) {
	const times = [];
	for (let count = 0; count < keys; count++) {
		const at = count % number.length;
		times.push(await program.time(number[at], `${number.slice(0, at + 1)}_`));
		if (at === number.length - 1) program.pty.write(empty);
		await wait(33);
	}
	return times;
}

/** Answers and goes back, again and again: each time the sheet is saved and the live figures move. */
async function answering(program) {
	const times = [];
	for (let count = 0; count < 40; count++) {
		program.pty.write(number[count % 2] === '3' ? '3.78' : '3.9');
		await wait(100);
		times.push(await program.time('\r', 'What is the stroke?'));
		await wait(33 + (count % 10) * 40);
		program.pty.write('\u0002');
		await wait(300);
	}
	return times;
}

/** How long after the last of many keys, 30 a second, its frame stands. */
async function backlog(program) {
	for (let count = 0; count < 300; count++) {
		program.pty.write(String(count % 10));
		await wait(1000 / 30);
	}
	return program.time('7', '567897_');
}

const share = (list, part) => [...list].sort((a, b) => a - b)[Math.floor(part * (list.length - 1))];
const told = list => [share(list, 0.5), share(list, 0.95)];
const row = (name, [median, p95], [least, least95]) =>
	console.log(
		`${name.padEnd(36)}${median.toFixed(1).padStart(8)}${p95.toFixed(1).padStart(8)}${(median / least).toFixed(2).padStart(10)}${(p95 / least95).toFixed(2).padStart(10)}`,
	);

const programs = [];
try {
	const bare = await open([join(root, 'tests/bench/bare-list.mjs')]);
	programs.push(bare);
	const full = await open([join(root, 'dist/swap-audit.js'), 'interview', sheet]);
	programs.push(full);
	// In turn, so that a busy moment of the machine hits both alike.
	const floor = [];
	const ours = [];
	for (let turn = 0; turn < 4; turn++) {
		floor.push(...(await typing(bare, '')));
		ours.push(...(await typing(full, '\u0015')));
	}
	const answers = await answering(full);
	const behind = [await backlog(bare), await backlog(full)];
	console.log(
		`${'from a key to its frame, ms'.padEnd(36)}${'median'.padStart(8)}${'p95'.padStart(8)}${'x bare'.padStart(10)}${'x p95'.padStart(10)}`,
	);
	row('a bare list of as many rows', told(floor), told(floor));
	row('a key in a number, live figures on', told(ours), told(floor));
	row('an answer saved, next question', told(answers), told(floor));
	console.log(
		`after 300 keys at 30 a second the last frame stood after ${behind[1].toFixed(1)} ms; bare ${behind[0].toFixed(1)}`,
	);
} finally {
	for (const { pty } of programs) pty.kill('SIGKILL');
	rmSync(home, { recursive: true, force: true });
}
