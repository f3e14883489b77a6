import { exit } from './exit.ts';

/** How far a long reading is, on a terminal alone; Ctrl-C ends the command with its line cleared. */
export interface ShownProgress {
	at(taken: number, size: number | null): void;
	/** All is read. From here on a signal may wait for a part of the work, a second at most. */
	judging(): void;
	/** How far the fit is, 0 to 1; it always goes on. */
	fitting(share: number): boolean;
	end(): void;
}

/** Progress on standard error; nothing is written where that is no terminal. */
export function progress(): ShownProgress {
	const shown = process.stderr.isTTY === true;
	let [last, width] = ['', 0];
	const write = (text: string) => {
		if (!shown || text === last) return;
		process.stderr.write(`\r${text.padEnd(width)}`);
		last = text;
		width = Math.max(width, text.length);
	};
	const clear = () => {
		// Two more for the ^C that the terminal may have put behind it.
		if (width > 0) process.stderr.write(`\r${' '.repeat(width + 2)}\r`);
		[last, width] = ['', 0];
	};
	const stop = () => {
		clear();
		process.exit(exit.interrupted);
	};
	process.once('SIGINT', stop);
	return {
		at: (taken, size) =>
			write(size ? `reading: ${Math.floor((taken / size) * 100)} %` : `reading: ${Math.floor(taken / 1e6)} MB`),
		judging: () => write('judging'),
		fitting(share) {
			write(`fitting: ${Math.floor(share * 100)} %`);
			return true;
		},
		end() {
			clear();
			process.off('SIGINT', stop);
		},
	};
}
