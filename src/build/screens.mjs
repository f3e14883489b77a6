// Records screens of the built command from a real pseudo-terminal as SVG, for README.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';

const [columns, rows] = [80, 24];
const [wide, high] = [8.4, 18];

const pause = milliseconds => new Promise(resolve => setTimeout(resolve, milliseconds));
const entities = text => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** Writes a screen of each name after the keys given, the keys of one after those of the other. */
export async function recordScreens(root, screens) {
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
	for (const { name, keys } of screens) {
		for (const key of keys) {
			pty.write(key);
			await pause(400);
		}
		writeFileSync(join(root, 'demo', `${name}.svg`), drawn(terminal));
	}
	pty.kill();
	rmSync(home, { recursive: true, force: true });
}

/** The screen as text in an SVG: bold stays bold, quiet lines are grey. */
function drawn(terminal) {
	const lines = Array.from({ length: rows }, (_, row) => {
		const line = terminal.buffer.active.getLine(terminal.buffer.active.viewportY + row);
		const cell = line?.getCell(0);
		const style = `${cell?.isBold() ? ' font-weight="bold"' : ''}${cell?.isDim() ? ' fill="#667"' : ''}`;
		const text = line?.translateToString(true) ?? '';
		return text === ''
			? ''
			: `<text x="12" y="${(row + 1) * high + 8}"${style} xml:space="preserve">${entities(text)}</text>`;
	});
	const [width, height] = [columns * wide + 24, rows * high + 24];
	return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="monospace" font-size="14" fill="#111">\n<title>A screen of swap-audit</title>\n<rect width="${width}" height="${height}" fill="#fdfdfa" stroke="#999"/>\n${lines.filter(Boolean).join('\n')}\n</svg>\n`;
}
