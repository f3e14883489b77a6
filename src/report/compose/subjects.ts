import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import { valueIn } from '../../graph/solve.ts';
import { lower } from './names.ts';

/** The part a finding speaks of, in the words of its question. */
export function subjectWords(
	{ rule, subject }: Pick<Finding, 'rule' | 'subject'>,
	{ model }: Pick<Assessment, 'model'>,
): string {
	const each = model.judge.rules.get(rule)?.each;
	if (!each || subject === null) return subject ?? '';
	const code = each.over === 'codes' ? model.rulebook.codes[subject] : undefined;
	if (code) return `${subject}, ${lower(code.title)}`;
	const question = model.judge.questions.get(each.answer);
	return each.over === 'cylinders' ? `cylinder ${subject}` : (question?.choices[subject] ?? subject);
}

/** As many usual values as a line on the wall names; of more it says how many. */
const mostAssumed = 6;

export const usualInBrief = (assumed: readonly string[], assessment: Assessment): string =>
	assumed.length <= mostAssumed
		? assumedWords(assumed, assessment)
		: `${assumed.length} usual values; "The numbers" names them.`;

/** Usual values that went in, by what they stand for, with their figures. */
const assumedWords = (assumed: readonly string[], assessment: Assessment): string =>
	usualValuesText(assumed.map(id => assumedName(id, assessment)));

export const usualValuesText = (names: readonly string[]): string => `usual values for ${names.join(', ')}.`;

/** What a usual value stands for, with its figure. */
export function assumedName(id: string, { state, wording }: Pick<Assessment, 'state' | 'wording'>): string {
	const [plain = id, from] = id.split(/ (?=\()/);
	const value = valueIn(state, plain);
	const shown = wording.show(plain, value);
	return [wording.label(plain), shown && typeof value === 'string' ? `(${shown})` : shown, from]
		.filter(Boolean)
		.join(' ');
}
