import { builtText } from './built.ts';
import { exit } from './exit.ts';
import { print } from './say.ts';

/** `swap-audit completion SHELL`: prints the script, which the build laid beside the program. */
export function completion(shell: string): number {
	print(builtText(`completion.${shell}`));
	return exit.done;
}
