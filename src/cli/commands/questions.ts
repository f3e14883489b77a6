import { wholeHow } from '../../sheet/how.ts';
import { sheetSchema } from '../../sheet/schema.ts';
import { textIn } from '../../sheet/text.ts';
import { readRulebook } from '../assets/assets.ts';
import { exit } from '../process/exit.ts';
import { print } from '../process/output.ts';

/** `swap-audit questions`: the catalog for people, as JSON, or the JSON Schema of a sheet. */
export function questions(flags: { readonly json?: boolean; readonly schema?: boolean }): number {
	const questions = readRulebook().rulebook.questions.map(({ howEach, ...question }) => ({
		...question,
		ask: textIn(question.ask, 'us'),
		how: wholeHow({ ...question, ...(howEach ? { howEach } : {}) }, 'us').join(' '),
	}));
	if (flags.schema) print(JSON.stringify(sheetSchema(questions), null, 2));
	else if (flags.json) print(JSON.stringify(questions, null, 2));
	else print(questions.map(({ id, ask }) => `${id.padEnd(34)} ${ask}`).join('\n'));
	return exit.done;
}
