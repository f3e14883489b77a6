// Records screens of the built command from a real pseudo-terminal as SVG, for README.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';

const [columns, rows] = [80, 24];
const [wide, high] = [8.4, 18];
const [width, height] = [columns * wide + 24, rows * high + 24];

const pause = milliseconds => new Promise(resolve => setTimeout(resolve, milliseconds));
const entities = text => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** Writes an SVG that moves: after each step's keys what the screen shows, for its seconds, again and again. */
export async function recordMovie(root, name, steps) {
	const home = mkdtempSync(join(tmpdir(), 'swap-audit-screens-'));
	const terminal = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
	const env = {
		PATH: process.env.PATH,
		TERM: 'xterm-256color',
		HOME: home,
		XDG_DATA_HOME: home,
		XDG_CONFIG_HOME: home,
	};
	const pty = spawn(process.execPath, [join(root, 'dist/swap-audit.js')], { cols: columns, rows, cwd: home, env });
	pty.onData(data => terminal.write(data));
	await pause(1500);
	const frames = [];
	for (const { keys, seconds } of steps) {
		for (const key of keys) {
			pty.write(key);
			await pause(key.length > 1 || key < ' ' ? 400 : 60);
		}
		frames.push({ lines: linesOf(terminal), seconds });
	}
	pty.kill();
	rmSync(home, { recursive: true, force: true });
	writeFileSync(join(root, 'demo', `${name}.svg`), moving(frames));
}

/** The rows of the screen as text elements: bold stays bold, quiet lines are gray. */
function linesOf(terminal) {
	return Array.from({ length: rows }, (_, row) => {
		const line = terminal.buffer.active.getLine(terminal.buffer.active.viewportY + row);
		const cell = line?.getCell(0);
		const style = `${cell?.isBold() ? ' font-weight="bold"' : ''}${cell?.isDim() ? ' fill="#667"' : ''}`;
		const text = line?.translateToString(true) ?? '';
		return text === ''
			? ''
			: `<text x="12" y="${(row + 1) * high + 8}"${style} xml:space="preserve">${entities(text)}</text>`;
	}).filter(Boolean);
}

/** The frames on top of each other, each seen in its share of the time. Where nothing may move, the last one stands. */
function moving(frames) {
	const whole = frames.reduce((sum, { seconds }) => sum + seconds, 0);
	const share = seconds => `${((100 * seconds) / whole).toFixed(2)}%`;
	let at = 0;
	const rules = frames.map(({ seconds }, place) => {
		const [from, to] = [share(at), share((at += seconds))];
		return `@keyframes f${place} { 0% { visibility: hidden } ${from} { visibility: visible } ${to}, 100% { visibility: hidden } }\n.f${place} { visibility: hidden; animation: f${place} ${whole}s step-end infinite }`;
	});
	const still = `@media (prefers-reduced-motion: reduce) { g { animation: none !important } .f${frames.length - 1} { visibility: visible } }`;
	const groups = frames.map(({ lines }, place) => `<g class="f${place}">\n${lines.join('\n')}\n</g>`);
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="monospace" font-size="14" fill="#111">\n<title>swap-audit in a terminal: questions, answers, the audit</title>\n<style>\n${rules.join('\n')}\n${still}\n</style>\n<rect width="${width}" height="${height}" fill="#fdfdfa" stroke="#999"/>\n${groups.join('\n')}\n</svg>\n`;
}
