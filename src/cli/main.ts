import { FileProblem } from '../files/problem.ts';
import { BadSheet } from '../sheet/problem.ts';
import { BadUsage, exit } from './exit.ts';
import { say } from './say.ts';

/** What an error means for whoever called: a line or more, and a status. */
function tell(error: unknown): number {
	if (error instanceof BadSheet) {
		say(error.message);
		return exit.badInput;
	}
	if (error instanceof FileProblem || error instanceof BadUsage) {
		say(error.message);
		return exit.badInput;
	}
	say(`This is a bug in swap-audit, not in your sheet: ${(error as Error)?.message ?? error}`);
	say('Your sheet is as it was last saved.');
	if (process.env.SWAP_AUDIT_TRACE) say(String((error as Error)?.stack));
	return exit.bug;
}

const { run } = await import('./program.ts');
try {
	process.exitCode = await run(process.argv.slice(2));
} catch (error) {
	process.exitCode = tell(error);
}
process.exit();
