// From a key to its frame, in a real pseudo-terminal with the live figures on, with the second pane and without, beside a bare
// list in the same run.
// Ratios count; milliseconds depend on the machine.
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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
const programs = [];
const wait = milliseconds => new Promise(resolve => setTimeout(resolve, milliseconds));

/** Nothing here takes as long, ms: a program that does has crashed or hangs. */
const bound = 10_000;

/** A promise, or an error that says what a program last wrote when it ends or is late. */
function within(promise, pty, wrote, what) {
	return new Promise((resolve, reject) => {
		const fail = how => reject(new Error(`${what}: ${how}; it wrote ${JSON.stringify(wrote().slice(-600))}`));
		const late = setTimeout(() => fail(`not within ${bound} ms`), bound);
		const ending = pty.onExit(({ exitCode, signal }) => fail(`it ended with ${exitCode}, signal ${signal}`));
		promise.then(resolve, reject).finally(() => {
			clearTimeout(late);
			ending.dispose();
		});
	});
}

/** A program in a pseudo-terminal that reports when it drew. */
async function open(args, cols = 80, rows = 24) {
	const env = {
		PATH: process.env.PATH,
		TERM: 'xterm-256color',
		HOME: home,
		XDG_DATA_HOME: home,
		XDG_CONFIG_HOME: home,
	};
	const pty = spawn(process.execPath, args, { cols, rows, cwd: home, env });
	programs.push(pty);
	let bytes = '';
	const listeners = new Set();
	pty.onData(data => {
		bytes += data;
		for (const listener of listeners) listener(data);
	});
	/** Resolves when what comes from now on has `sign` in it. */
	const shows = (sign, seen = '') => {
		const shown = new Promise(resolve => {
			const look = data => {
				seen += data;
				if (!seen.includes(sign)) return;
				listeners.delete(look);
				resolve();
			};
			listeners.add(look);
			look('');
		});
		return within(shown, pty, () => seen, `no ${JSON.stringify(sign)}`);
	};
	await shows('\u001b[?2004h', bytes);
	await wait(1500);
	return {
		pty,
		/** Milliseconds from a key until a frame that shows `sign`. */
		async time(key, sign) {
			const start = performance.now();
			const shown = shows(sign);
			pty.write(key);
			await shown;
			return performance.now() - start;
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
const columns = (name, cells) => console.log(name.padEnd(44) + cells.map(cell => cell.padStart(9)).join(''));
const row = (name, times, floor) => {
	const [median, p95, least, least95] = [share(times, 0.5), share(times, 0.95), share(floor, 0.5), share(floor, 0.95)];
	columns(name, [median.toFixed(1), p95.toFixed(1), (median / least).toFixed(2), (p95 / least95).toFixed(2)]);
};

try {
	const command = [join(root, 'dist/swap-audit.js'), 'interview'];
	const copy = sheet.replace('build', 'wide');
	copyFileSync(sheet, copy);
	const bare = await open([join(root, 'tests/bench/bare-list.mjs')]);
	const narrow = await open([...command, sheet]);
	const wide = await open([...command, copy], 100, 30);
	// In turn, so that a busy moment of the machine hits all alike.
	const [floor, typed, typedWide] = [[], [], []];
	for (let turn = 0; turn < 4; turn++) {
		floor.push(...(await typing(bare, '')));
		typed.push(...(await typing(narrow, '\u0015')));
		typedWide.push(...(await typing(wide, '\u0015')));
	}
	const answers = await answering(narrow);
	const answersWide = await answering(wide);
	const behind = [];
	for (const program of [bare, narrow, wide]) behind.push((await backlog(program)).toFixed(1));
	columns('from a key to its frame, ms', ['median', 'p95', 'x bare', 'x p95']);
	row('a bare list of 19 rows, 80 x 24', floor, floor);
	row('a key in a number, 80 x 24', typed, floor);
	row('a key in a number, second pane, 100 x 30', typedWide, floor);
	row('an answer saved, next question, 80 x 24', answers, floor);
	row('the same with the second pane, 100 x 30', answersWide, floor);
	console.log(
		`after 300 keys at 30 a second the last frame stood after ${behind[1]} ms, with the pane ${behind[2]}; bare ${behind[0]}`,
	);
} finally {
	for (const pty of programs) pty.kill('SIGKILL');
	rmSync(home, { recursive: true, force: true });
}
