import { FileProblem } from '../files/problem.ts';
import { BadUsage, exit } from './exit.ts';
import { print, say } from './say.ts';
import { version } from './version.ts';

/** What an error means for whoever called: a line or more, and a status. */
function tell(error: unknown): number {
	if (error instanceof FileProblem || error instanceof BadUsage) {
		say(error.message);
		return exit.badInput;
	}
	say(`This is a bug in swap-audit, not in your sheet: ${(error as Error)?.message ?? error}`);
	say('Your sheet is as it was last saved.');
	if (process.env.SWAP_AUDIT_TRACE) say(String((error as Error)?.stack));
	return exit.bug;
}

const args = process.argv.slice(2);
try {
	// The one question that needs no command line library.
	if (args.length === 1 && args[0] === '--version') print(version);
	else process.exitCode = await (await import('./program.ts')).run(args);
} catch (error) {
	process.exitCode = tell(error);
}
process.exit();
