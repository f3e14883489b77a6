import { spawn } from '@lydell/node-pty';
import headless from '@xterm/headless';
import { command, sharedCache } from './command.ts';

export interface TerminalOptions {
	readonly args?: readonly string[];
	readonly cols?: number;
	readonly rows?: number;
	readonly home: string;
	readonly env?: Readonly<Record<string, string>>;
	/** Another program than the built command, for comparison. */
	readonly file?: string;
	/** Whether `file` is no script of Node's. */
	readonly program?: boolean;
}

/** What the command draws in a real pseudo-terminal, with a screen that can be read and keys that can be typed. */
export interface Terminal {
	/** Sends keys as one write, as a paste or a fast typist would. */
	send(keys: string): void;
	/** Sends keys one by one, each after the screen has answered the one before. */
	type(keys: readonly string[]): Promise<void>;
	/** The screen's rows, without the spaces at their ends. */
	screen(): string[];
	/** Everything above the screen too. */
	scrollback(): string[];
	/** Waits until the screen shows a text; fails with the screen when it does not. */
	sees(text: string | RegExp, within?: number): Promise<void>;
	/** Waits until the command takes keys: it says so by turning marked pastes on. */
	ready(): Promise<void>;
	/** Waits until nothing new has been drawn for a moment. */
	quiet(): Promise<void>;
	resize(cols: number, rows: number): Promise<void>;
	kill(signal: string): void;
	/** All bytes that came out. */
	readonly bytes: () => string;
	readonly done: Promise<{ readonly status: number; readonly signal: number | undefined }>;
	readonly pid: number;
}

const settle = (milliseconds: number) => new Promise(resolve => setTimeout(resolve, milliseconds));

/** Starts the command in a pseudo-terminal. CI is unset: under it the drawing library draws nothing until the end. */
export function openTerminal({
	args = [],
	cols = 80,
	rows = 24,
	home,
	env = {},
	file = command,
	program = false,
}: TerminalOptions): Terminal {
	const screen = new headless.Terminal({ cols, rows, scrollback: 2000, allowProposedApi: true });
	const base = {
		PATH: process.env.PATH ?? '',
		TERM: 'xterm-256color',
		HOME: home,
		XDG_DATA_HOME: home,
		XDG_CACHE_HOME: sharedCache,
		XDG_CONFIG_HOME: home,
	};
	const pty = spawn(program ? file : process.execPath, program ? [...args] : [file, ...args], {
		cols,
		rows,
		cwd: home,
		env: { ...base, ...env },
	});
	let bytes = '';
	let lastByte = Date.now();
	const lookers = new Set<() => void>();
	pty.onData(data => {
		bytes += data;
		lastByte = Date.now();
		screen.write(data, () => {
			for (const look of lookers) look();
		});
	});
	/** Resolves as soon as what came makes it so. */
	const once = (so: () => boolean, within: number, late: () => string) =>
		new Promise<void>((resolve, reject) => {
			const end = (settle: () => void) => {
				clearTimeout(timer);
				lookers.delete(look);
				settle();
			};
			const look = () => {
				if (so()) end(resolve);
			};
			const timer = setTimeout(() => end(() => reject(new Error(late()))), within);
			lookers.add(look);
			look();
		});
	const done = new Promise<{ status: number; signal: number | undefined }>(resolve =>
		pty.onExit(({ exitCode, signal }) => resolve({ status: exitCode, signal })),
	);
	const rowsFrom = (first: number, count: number) =>
		Array.from({ length: count }, (_, row) => screen.buffer.active.getLine(first + row)?.translateToString(true) ?? '');
	const terminal: Terminal = {
		send: keys => pty.write(keys),
		async type(keys) {
			for (const key of keys) {
				pty.write(key);
				await terminal.quiet();
			}
		},
		screen: () => rowsFrom(screen.buffer.active.viewportY, screen.rows),
		scrollback: () => rowsFrom(0, screen.buffer.active.length),
		async sees(text, within = 8000) {
			const there = () => {
				const shown = terminal.screen().join('\n');
				return typeof text === 'string' ? shown.includes(text) : text.test(shown);
			};
			await once(there, within, () => `never saw ${text}; the screen is\n${terminal.screen().join('\n')}`);
		},
		async ready() {
			const announced = () => bytes.includes('\u001b[?2004h');
			await once(announced, 8000, () => `never ready; it said ${JSON.stringify(bytes.slice(-500))}`);
			await terminal.quiet();
		},
		async quiet() {
			const start = Date.now();
			do await settle(8);
			while (Date.now() - Math.max(lastByte, start) < 24 && Date.now() - start < 2000);
		},
		async resize(columns, lines) {
			// A terminal changes first and then shows the program.
			screen.resize(columns, lines);
			pty.resize(columns, lines);
			await terminal.quiet();
		},
		kill: signal => pty.kill(signal),
		bytes: () => bytes,
		done,
		pid: pty.pid,
	};
	return terminal;
}
