import { readAsset } from './assets/assets.ts';
import { crashContext } from './process/crash-context.ts';
import { exit, isForPerson } from './process/exit.ts';
import { printMessage } from './process/output.ts';
import { sourceStack } from './process/source-stack.ts';

/** What an error means for whoever called: a line or more, and a status. The stack of a bug is shown when asked for only. */
function report(error: unknown): number {
	if (isForPerson(error)) {
		printMessage(error.message);
		return exit.badInput;
	}
	const { message, stack } = error instanceof Error ? error : { message: String(error), stack: undefined };
	printMessage(`This is a bug in swap-audit, not in your sheet: ${message}`);
	if (crashContext.path !== null) printMessage(`Your sheet is as it was last saved, in ${crashContext.path}.`);
	if (process.env.SWAP_AUDIT_TRACE) printMessage(placed(String(stack)));
	else printMessage('To see where it broke, do the same again with SWAP_AUDIT_TRACE=1 set.');
	return exit.bug;
}

/** Where the map is gone as well, the places of the bundle are better than none. */
function placed(stack: string): string {
	try {
		return sourceStack(stack, readAsset('program.js.map'));
	} catch {
		return stack;
	}
}

// What is thrown outside of any call (a timer, a key) ends the same way.
process.on('uncaughtException', error => process.exit(report(error)));

/** Runs a command line to its end; gives the exit status. */
async function main(args: readonly string[]): Promise<number> {
	try {
		return await (await import('./program.ts')).run(args);
	} catch (error) {
		return report(error);
	}
}

// The program is one script and exports nothing: it hands its entry to whoever loaded it.
declare const entry: (main: (args: readonly string[]) => Promise<number>) => void;
entry(main);
