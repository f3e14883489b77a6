import { exit } from './exit.ts';

/** How far a long reading is, on a terminal alone; Ctrl-C ends the command with its line cleared. */
export interface ShownProgress {
	at(taken: number, size: number | null): void;
	/** All is read. What follows leaves no signal time to be heard: Ctrl-C ends the process as it does any. */
	judging(): void;
	/** How far the fit is, 0 to 1; it always goes on. */
	fitting(share: number): boolean;
	end(): void;
}

export function progress(): ShownProgress {
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
		judging() {
			process.off('SIGINT', stop);
			write('judging');
		},
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
