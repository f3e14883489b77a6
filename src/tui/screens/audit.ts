import type { Finding } from '../../audit/audit.ts';
import { courseOf, isListed, shownAt } from '../../audit/stages.ts';
import { asked } from '../../interview/queue.ts';
import { isAnswered } from '../../interview/state.ts';
import { stageBy } from '../../report/compose/names.ts';
import { readinessWords } from '../../report/compose/readiness.ts';
import { subjectWords } from '../../report/compose/subjects.ts';
import { widthOf } from '../../text/wrap.ts';
import type { App } from '../app.ts';
import { arrive, dispatch, toReview } from '../asking.ts';
import { findingLines, lookOf } from '../finding-lines.ts';
import type { Frame } from '../frame.ts';
import { toAudit } from '../judging.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { readLog } from '../log-steps.ts';
import { clip, type Look, line, lines } from '../text.ts';
import { glyphs } from '../theme.ts';
import { isTicked, tick } from '../ticks.ts';

/** What the audit screen lists: what fails, by priority, then what waits for an answer and could hurt. */
export const listed = ({ assessment }: App): Finding[] =>
	assessment ? assessment.audit.findings.filter(isListed) : [];

const count = (app: App) => listed(app).length;

/** The next answer worth giving: the one that could turn most lines, else the next open question. */
function nextUp(app: App): App {
	const state = app.interview!;
	const open = new Set(
		asked({ ...state, pass: 'full', section: null })
			.filter(question => !isAnswered(state, question))
			.map(({ id }) => id),
	);
	const worth = app.assessment?.audit.next.find(({ answer }) => open.has(answer))?.answer;
	const waiting = listed(app)
		.flatMap(({ missing }) => missing)
		.find(id => open.has(id));
	const id = worth ?? waiting ?? [...open][0];
	if (id === undefined) return { ...app, notice: 'Every question is answered.' };
	const full = { ...app, interview: { ...state, pass: 'full' as const, section: null, recheck: null } };
	return arrive({
		...dispatch(full, { do: 'go', id }),
		screen: 'question',
		interview: { ...dispatch(full, { do: 'go', id }).interview!, fromReview: false },
	});
}

export const paned = true;

export const bindings: readonly Binding[] = [
	{
		keys: ['enter'],
		shown: 'Enter',
		label: 'see it whole',
		when: app => count(app) > 0,
		run: app => ({ ...app, screen: 'finding', scroll: 0 }),
	},
	{
		keys: ['text: '],
		shown: 'Space',
		label: 'tick',
		when: app => count(app) > 0,
		run: app => tick(app, listed(app)[app.cursor]!, listed(app)),
	},
	{
		keys: ['text:l'],
		shown: 'L',
		label: 'what gives out first',
		run: app => ({ ...app, screen: 'limits', scroll: 0 }),
	},
	{ keys: ['text:n'], shown: 'N', label: 'answer these next', run: nextUp },
	{
		keys: ['text:p'],
		shown: 'P',
		label: 'what can I do tonight?',
		when: app => count(app) > 0,
		run: app => ({ ...app, screen: 'tonight', cursor: 0, notice: null }),
	},
	{
		keys: ['text:c'],
		shown: 'C',
		label: 'what changed',
		when: app => app.assessment?.audit.since != null,
		run: app => ({ ...app, screen: 'changed', cursor: 0 }),
	},
	{
		keys: ['text:r'],
		shown: 'R',
		label: 'recheck',
		when: app => (app.interview?.sheet.audits.length ?? 0) > 0,
		run: app => ({ ...app, screen: 'touched', cursor: 0, touched: [], unfolded: null }),
	},
	{ keys: ['text:g'], shown: 'G', label: 'read a log', run: readLog },
	{ keys: ['text:s'], shown: 'S', label: 'save the audit', run: app => toAudit(app) },
	{
		keys: ['ctrl-r'],
		shown: '^R',
		label: 'review answers',
		run: toReview,
	},
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back', run: app => backToQuestions(app) },
	...listKeys(count),
];

function backToQuestions(app: App): App {
	if (app.interview?.at !== null) return arrive({ ...app, screen: 'question' });
	const back = dispatch(app, { do: 'back' });
	return arrive({ ...back, screen: back.interview?.at === null ? 'audit' : 'question' });
}

/** The list by urgency, a stage at a time, each under how ready it is. */
export function view(app: App, width: number, whole: number): Frame {
	const { audit } = app.assessment!;
	const found = listed(app);
	const cursor = Math.min(app.cursor, Math.max(0, found.length - 1));
	const here = found[cursor];
	const rows = stageRows(app, found);
	const ticked = found.filter(finding => isTicked(app, finding)).length;
	const place = found.length > 0 ? `: ${cursor + 1} of ${found.length}${ticked > 0 ? `, ${ticked} ticked` : ''}` : '';
	return {
		top: [line(clip(`Audit of ${audit.sheet}${place}`, width), 'title')],
		rows: {
			items: rows.map(({ text }) => clip(text, width - 2)),
			looks: rows.map(({ look }) => look),
			cursor: Math.max(
				0,
				rows.findIndex(({ finding }) => finding !== null && finding === found[cursor]),
			),
		},
		...(found.length > 0 ? { pane: (room: number) => findingLines(app, found[cursor]!, room) } : {}),
		bottom: [
			...(here && width === whole && widthOf(here.title) + 9 > width ? lines(here.title, width, 'quiet') : []),
			...(app.notice ? lines(app.notice, width, 'good') : []),
		],
		panel: [],
		footer: [],
	};
}

interface Row {
	readonly text: string;
	readonly look: Look;
	readonly finding: Finding | null;
}

/** Each stage as a heading, its findings below it. */
function stageRows(app: App, found: readonly Finding[]): Row[] {
	const course = courseOf(app.assessment!.state);
	const { ticked, open } = glyphs(app.appearance);
	return readinessWords(app.assessment!).flatMap(({ stage, ready, words }): Row[] => {
		const own = found.filter(finding => shownAt(finding.stage, course) === stage);
		const heading = `${ready ? '+' : '!'} ${stageBy(stage, app.assessment!)}: ${words}`;
		return [
			{ text: heading, look: ready ? 'good' : 'title', finding: null },
			...own.map(finding => {
				const about = finding.subject === null ? '' : ` (${subjectWords(finding, app.assessment!)})`;
				const mark = isTicked(app, finding) ? ticked : open;
				const text = `  ${mark} ${finding.verdict === 'fails' ? '!' : '?'} ${finding.title}${about}`;
				return { text, look: lookOf(finding), finding };
			}),
		];
	});
}
