import { exit } from './exit.ts';

/** How far a long reading is, on a terminal alone; Ctrl-C ends the command with its line cleared. */
export function progress(): { at(taken: number, size: number | null): void; end(): void } {
	const shown = process.stderr.isTTY === true;
	let last = '';
	const write = (text: string) => {
		if (!shown || text === last) return;
		process.stderr.write(`\r${text.padEnd(last.length)}`);
		last = text;
	};
	const clear = () => {
		if (last !== '') process.stderr.write(`\r${' '.repeat(last.length)}\r`);
		last = '';
	};
	const stop = () => {
		clear();
		process.exit(exit.interrupted);
	};
	process.once('SIGINT', stop);
	return {
		at: (taken, size) =>
			write(size ? `reading: ${Math.floor((taken / size) * 100)} %` : `reading: ${Math.floor(taken / 1e6)} MB`),
		end() {
			clear();
			process.off('SIGINT', stop);
		},
	};
}
