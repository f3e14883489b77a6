import { isSecondRound } from '../../interview/person-time.ts';
import { countWords } from '../../interview/state.ts';
import { stageBy } from '../../report/compose/names.ts';
import { readinessWords } from '../../report/compose/readiness.ts';
import type { App } from '../app.ts';
import type { Frame } from '../frame.ts';
import { type Binding, scrollKeys } from '../keymap.ts';
import { line, lines } from '../text.ts';
import { listed } from './audit.ts';

export const bindings: readonly Binding[] = [
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'the whole audit',
		run: app => ({ ...app, screen: 'audit', cursor: 0 }),
	},
	...scrollKeys(),
];

const jobs = 3;

/** The end of a pass: what is known, what comes first, where the audit is, what to do next time. */
export function view(app: App, width: number): Frame {
	const state = app.interview!;
	const { audit } = app.assessment!;
	const part = (title: string, rows: readonly string[]) =>
		rows.length > 0
			? [line(''), line(title, 'title'), ...rows.flatMap(row => lines(`- ${row}`, width, 'plain', '  '))]
			: [];
	const first = listed(app).filter(({ verdict }) => verdict === 'fails');
	const next = readinessWords(app.assessment!).find(({ ready }) => !ready);
	const worth = audit.next.flatMap(({ answer }) => {
		const question = state.model.rulebook.questions.find(({ id }) => id === answer);
		return question ? [`${question.label}${isSecondRound(question) ? ', with the gauge in hand' : ''}`] : [];
	});
	return {
		top: [
			line(`Audit of ${audit.sheet}: the pass is done`, 'title'),
			...lines(`${countWords(state)}.`, width),
			...(next ? lines(`${stageBy(next.stage, app.assessment!)}: ${next.words}.`, width) : []),
			...part(
				'The first jobs',
				first.slice(0, jobs).map(({ title, do: steps }) => `${title}. ${steps[0] ?? ''}`),
			),
			...part('Worth finding out', worth.slice(0, jobs)),
			...part('Next time', [
				'swap-audit plan with this sheet: an evening of work, one place at a time.',
				'Opened again, this sheet asks what was touched since, and only that.',
			]),
		],
		scroll: app.scroll,
		rows: null,
		bottom: app.notice ? lines(app.notice, width, 'good') : [],
		panel: [],
		footer: [],
	};
}
