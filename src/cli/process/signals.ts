import { constants } from 'node:os';

/** Signals that end a program unless it says otherwise. One that names a broken program (a bad address, say) is left to the engine. */
const ending = [
	'SIGHUP',
	'SIGINT',
	'SIGQUIT',
	'SIGTERM',
	'SIGALRM',
	'SIGVTALRM',
	'SIGXCPU',
	'SIGXFSZ',
	'SIGUSR2',
	'SIGIO',
	'SIGPWR',
	'SIGSTKFLT',
	// Unanswered it opens the engine's debugger to the network.
	'SIGUSR1',
] as const satisfies NodeJS.Signals[];

/** Calls `stop` with the exit status (128 and the signal's number, as shells count it) when a signal asks the program to end. Systems that lack a signal never send it. */
export function onEndingSignal(stop: (status: number) => void): void {
	for (const signal of ending) {
		if (!(signal in constants.signals)) continue;
		try {
			process.on(signal, () => stop(128 + constants.signals[signal]));
		} catch {
			// Known by name only here.
		}
	}
}
