import type { Question } from '../../sheet/question.ts';
import { answerTo } from '../../sheet/sheet.ts';
import { formatAnswer } from '../../wording/format.ts';
import { type App, arrive, tell, toAudit } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { clip, line, lines } from '../text.ts';

const answered = ({ model, interview }: App): Question[] =>
	model.rulebook.questions.filter(({ id }) => answerTo(interview!.sheet, id) !== undefined);
const count = (app: App) => answered(app).length;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'change',
		when: app => count(app) > 0,
		run: app => arrive({ ...tell(app, { do: 'go', id: answered(app)[app.cursor]!.id }), screen: 'question' }),
	},
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back to the questions', run: app => backToQuestions(app) },
	{ keys: ['ctrl-t'], shown: '^T', label: 'audit', run: toAudit },
	...listKeys(count),
];

function backToQuestions(app: App): App {
	const back = tell(app, { do: 'back' });
	return arrive({ ...back, screen: back.interview?.at === null ? 'review' : 'question' });
}

/** Every answer; one that is not in effect says so. */
export function view(app: App, width: number): Frame {
	const state = app.interview!;
	const items = answered(app).map(question => {
		const answer = answerTo(state.sheet, question.id)!;
		const told = answer.value === undefined ? 'not known' : formatAnswer(question, answer, state.sheet.units);
		return clip(`${question.id}  ${told}${state.relevance.inEffect(question) ? '' : '  (not in effect)'}`, width - 2);
	});
	return {
		top: [line('Your answers', 'title')],
		rows: items.length > 0 ? { items, cursor: Math.min(app.cursor, items.length - 1) } : null,
		bottom: [
			...(items.length === 0 ? [line('Nothing is answered yet.')] : []),
			...(state.said ? lines(state.said.text, width, 'good') : []),
		],
		panel: [],
		footer: [],
	};
}
