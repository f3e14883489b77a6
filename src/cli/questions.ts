import { builtRulebook } from './built.ts';
import { print } from './say.ts';

/** `swap-audit questions`: the catalogue, for people or as JSON. */
export function questions(flags: { readonly json?: boolean }): number {
	const { questions } = builtRulebook();
	if (flags.json) print(JSON.stringify(questions, null, 2));
	else print(questions.map(({ id, ask }) => `${id.padEnd(34)} ${ask}`).join('\n'));
	return 0;
}
