import type { Example, Rule } from '../rulebook/rulebook.ts';

/** An example that decides a rule by answers alone, so that the quantities on the way are tried too. */
const byAnswers = ({ quantities, then }: Example): boolean =>
	(then === 'fails' || then === 'holds') && Object.keys(quantities).length === 0;

/** The rules no example of which gives answers alone; what a log says is no answer. */
export const withoutAnswers = (rules: readonly Rule[]): string[] =>
	rules
		.filter(({ section, examples }) => section !== 'log' && !examples.some(byAnswers))
		.map(({ id, at }) => `${at} ${id}: one example must come to fails or holds by answers, without a quantity given`);
