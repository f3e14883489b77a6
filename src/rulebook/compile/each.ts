import { logQuantities } from '../../log/all.ts';
import { pullNumbers } from '../../log/quantities.ts';
import { checks } from '../../plugs/checks/all.ts';
import type { Question } from '../../sheet/question.ts';
import { plugNames } from '../judge-parts.ts';
import type { Each } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';
import { type Type, typeOfKind } from './names.ts';

const overs: Readonly<Record<string, Each['over']>> = {
	several: 'choices',
	'per-cylinder': 'cylinders',
	codes: 'codes',
	circuits: 'circuits',
};

/** Every name that may stand for something of the part at hand; no threshold has one of them. */
export const partNames: readonly string[] = [
	...plugNames,
	'value',
	'state',
	'code_title',
	'code_action',
	'code_topics',
	'code_known',
];

/** Of which answer a rule makes a finding a part; null for a rule on the build as a whole. */
export function readEach(fields: Fields, questions: ReadonlyMap<string, Question>): Each | null {
	const placed = fields.placed('each', false);
	const subjects = fields.has('only') ? fields.texts('only') : null;
	if (!placed) {
		if (subjects) fields.report('only', 'only: it goes with each, and there is none here');
		return null;
	}
	if (placed.text.startsWith('plugs.')) {
		if (subjects) fields.report('only', 'only: it goes with an answer of ticked choices');
		if (!Object.hasOwn(checks, placed.text))
			fields.report('each', `${quote(placed.text)} is no check of plugs: ${Object.keys(checks).join(', ')}`);
		return { answer: placed.text, over: 'plugs', subjects: null };
	}
	if (placed.text === 'pull') {
		if (subjects) fields.report('only', 'only: it goes with an answer of ticked choices');
		return { answer: pullNumbers, over: 'pulls', subjects: null };
	}
	const question = questions.get(placed.text);
	const over = question && Object.hasOwn(overs, question.kind) ? overs[question.kind] : undefined;
	if (!question || !over) {
		const parts = 'ticked choices, cylinders, codes, circuits; or pull, of a log';
		fields.report('each', `${quote(placed.text)} is no answer with several parts (${parts})`);
		return null;
	}
	if (subjects && over !== 'choices') fields.report('only', 'only: it goes with an answer of ticked choices');
	for (const subject of subjects ?? []) {
		if (over === 'choices' && !Object.hasOwn(question.choices, subject))
			fields.report('only', `${quote(subject)} is not one of its choices`);
	}
	return { answer: question.id, over, subjects };
}

/** The names that stand for the part at hand: what `item` and `value` are depends on the answer. */
export function eachNames(each: Each | null, questions: ReadonlyMap<string, Question>): [string, Type][] {
	if (!each) return [];
	if (each.over === 'plugs')
		return plugNames.map(name => [name, name === 'right' ? { is: 'yes-no' } : { is: 'text', choices: null }]);
	const text = (choices: readonly string[] | null): Type => ({ is: 'text', choices });
	switch (each.over) {
		case 'choices':
			return [['item', text(each.subjects ?? Object.keys(questions.get(each.answer)!.choices))]];
		case 'cylinders':
			return [
				['item', text(null)],
				['value', { is: 'number', kind: questions.get(each.answer)!.of[0] ?? 'ratio' }],
			];
		case 'pulls':
			return [['item', text(null)], ...pullNames];
		case 'codes':
			return [
				['item', text(null)],
				['code_title', text(null)],
				['code_action', text(null)],
				['code_topics', text(null)],
				['code_known', { is: 'yes-no' }],
			];
		case 'circuits':
			return [
				['item', text(null)],
				['state', text(['done', 'to-do', 'not-used'])],
			];
	}
}

/** Of a pull each figure is one, not the list of them. */
const pullNames = logQuantities
	.filter(({ logged }) => logged === 'pull')
	.map(({ id, kind }): [string, Type] => [id, typeOfKind(kind)]);
