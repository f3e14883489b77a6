import { type Evening, planEvenings } from '../../audit/plan.ts';
import { nextStage, type PlanLine, planLines } from '../../audit/plan-lines.ts';
import { valueIn } from '../../graph/solve.ts';
import { namesRead } from '../../rulebook/reads.ts';
import { type Access, accesses } from '../../sheet/access.ts';
import { placeWords } from '../../wording/places.ts';
import { whenAnswerable } from '../../wording/when.ts';
import type { App } from '../app.ts';
import { arrive, dispatch } from '../asking.ts';
import type { Frame } from '../frame.ts';
import { type Binding, listKeys } from '../keymap.ts';
import { clip, line, lines } from '../text.ts';
import { glyphs } from '../theme.ts';
import { isTicked, tick } from '../ticks.ts';
import { listed } from './audit.ts';

/** How long an evening may be, min. */
const lengths = [30, 60, 120, 240] as const;

/** The open lines of the next stage; worked out once for an audit. */
const known = new WeakMap<object, readonly PlanLine[]>();

function openLines({ assessment }: App): readonly PlanLine[] {
	if (!assessment) return [];
	let open = known.get(assessment);
	if (!open) {
		const stage = nextStage(assessment);
		known.set(assessment, (open = stage === null ? [] : planLines(assessment, stage)));
	}
	return open;
}

/** The first evening of so many minutes, at the place that was chosen, if one was. */
function tonight(app: App): Evening | null {
	const { minutes, place } = app.evening;
	const engineOut = valueIn(app.assessment!.state, 'build.stage') === 'on-stand';
	return planEvenings(openLines(app), { minutes, only: place, engineOut }).evenings[0] ?? null;
}

const rows = (app: App): readonly PlanLine[] => tonight(app)?.lines ?? [];
const count = (app: App) => rows(app).length;
const atCursor = (app: App): PlanLine | undefined => rows(app)[Math.min(app.cursor, count(app) - 1)];

/** The places where something is open, after every place. */
const places = (app: App): (Access | null)[] => [
	null,
	...accesses.filter(place => openLines(app).some(({ access }) => access === place)),
];

const after = <T>(list: readonly T[], now: T): T => list[(list.indexOf(now) + 1) % list.length]!;

const done = (app: App): PlanLine[] => rows(app).filter(({ finding }) => finding && isTicked(app, finding));

export const bindings: readonly Binding[] = [
	{
		keys: ['text: '],
		shown: 'Space',
		label: 'done',
		when: app => atCursor(app)?.finding != null,
		run: app => tick(app, atCursor(app)!.finding!, listed(app)),
	},
	{ keys: ['enter'], shown: 'Enter', label: 'see it, or answer it', when: app => count(app) > 0, run: open },
	{
		keys: ['text:m'],
		shown: 'M',
		label: 'minutes',
		run: app => ({ ...app, cursor: 0, evening: { ...app.evening, minutes: after(lengths, app.evening.minutes) } }),
	},
	{
		keys: ['text:w'],
		shown: 'W',
		label: 'where',
		run: app => ({ ...app, cursor: 0, evening: { ...app.evening, place: after(places(app), app.evening.place) } }),
	},
	{
		keys: ['text:a'],
		shown: 'A',
		label: 'what is done, into the answers',
		when: app => done(app).length > 0,
		run: intoAnswers,
	},
	{ keys: ['ctrl-b', 'escape'], shown: '^B', label: 'back', run: app => ({ ...app, screen: 'audit', cursor: 0 }) },
	...listKeys(count),
];

/** A line of work whole, or the question of what is to be found out. */
function open(app: App): App {
	const { finding, findOut } = atCursor(app)!;
	if (finding) return { ...app, screen: 'finding', scroll: 0, cursor: Math.max(0, listed(app).indexOf(finding)) };
	const full = { ...app, interview: { ...app.interview!, pass: 'full' as const, section: null, recheck: null } };
	return arrive({ ...dispatch(full, { do: 'go', id: findOut!.question.id }), screen: 'question' });
}

/** A recheck of the answers that the ticked lines read: they say whether it is done. */
function intoAnswers(app: App): App {
	const { rules } = app.model.rulebook;
	const names = done(app).flatMap(({ finding }) => [...namesRead(rules.find(({ id }) => id === finding!.rule)!)]);
	const begun = dispatch(app, { do: 'recheck', touched: names });
	return begun.interview?.at === null ? app : arrive({ ...begun, screen: 'question' });
}

/** What can be done tonight: so many minutes at one place, the lines to tick. */
export function view(app: App, width: number): Frame {
	const evening = tonight(app);
	const { minutes, place } = app.evening;
	const marks = glyphs(app.appearance);
	const items = rows(app).map(({ finding, findOut, minutes: takes }) => {
		const mark = finding && isTicked(app, finding) ? marks.ticked : marks.open;
		if (finding) return clip(`${mark} ${finding.title} (${takes} min)`, width - 2);
		const { question } = findOut!;
		return clip(`? ${question.label}, ${whenAnswerable(question)} (${takes} min)`, width - 2);
	});
	const where = place === null ? 'every place' : placeWords[place];
	const summary = evening
		? `${placeWords[evening.access]}: ${evening.minutes} min${evening.minutes > minutes ? ', one line alone is longer' : ''}.`
		: 'Nothing is open there.';
	return {
		top: [line(clip(`What can I do tonight? ${minutes} minutes, ${where}`, width), 'title'), ...lines(summary, width)],
		rows: items.length > 0 ? { items, cursor: Math.min(app.cursor, items.length - 1) } : null,
		bottom: app.notice ? lines(app.notice, width, 'good') : [],
		panel: [],
		footer: [],
	};
}
