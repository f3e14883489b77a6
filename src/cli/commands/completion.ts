import { readAsset } from '../assets/assets.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';

/** `swap-audit completion SHELL`: prints the script, which the build laid beside the program. */
export function completion(shell: string): number {
	print(readAsset(`completion.${shell}`));
	return exit.done;
}
