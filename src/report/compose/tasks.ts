import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import type { FindOut } from '../../audit/find-out.ts';
import { wouldSettle } from '../../audit/settles.ts';
import { sureEnough } from '../../audit/unproved.ts';
import type { Stage } from '../../rulebook/rulebook.ts';
import type { Access } from '../../sheet/access.ts';
import type { Question } from '../../sheet/question.ts';
import { placeWords } from '../../wording/places.ts';
import { whenAnswerable } from '../../wording/when.ts';
import { type Block, code, type Inline, strong, type TaskMark } from '../document.ts';
import { briefCautions, count, lower, upper } from './names.ts';
import type { StageLines } from './stage-lines.ts';
import { subjectWords, usualInBrief } from './subjects.ts';

type Task = Extract<Block, { is: 'task' }>;

/** A line of the list, and what page one says of it: what it is, where, and with which cautions. */
export interface Line {
	readonly what: string;
	readonly mark: TaskMark;
	readonly cautions: readonly string[];
	readonly task: Task;
}

/** The lines of a stage: what is wrong by priority, what could not be worked out, what has to be found out, what is not proved. */
export function linesOf({ stage, fails, broken, asked, unproved }: StageLines, assessment: Assessment): Line[] {
	return [
		...fails.map(finding => failed(finding, stage, assessment)),
		...broken.map(finding => unworked(finding, stage, assessment)),
		...cardsOf(asked).map(card => asking(card, stage, assessment)),
		...unproved.map(finding => notProved(finding, stage, assessment)),
	];
}

export const titleOf = (finding: Finding, assessment: Assessment): string =>
	`${finding.title}${finding.subject === null ? '' : ` (${subjectWords(finding, assessment)})`}`;

/** Where the work of a finding is. */
export const accessOf = ({ rule }: Finding, { model }: Pick<Assessment, 'model'>): Access =>
	model.judge.rules.get(rule)?.access ?? 'papers';

function failed(finding: Finding, stage: Stage, assessment: Assessment): Line {
	const mark = markOf(finding, stage, assessment);
	const [first, ...rest] = finding.do;
	const what = titleOf(finding, assessment);
	const details: Inline[][] = [
		...rest.map((step): Inline[] => [step]),
		...(finding.why ? [[strong('Why: '), finding.why]] : []),
		...(finding.prove ? [[strong('Done when: '), finding.prove]] : []),
		...(finding.sure !== null && finding.sure < sureEnough
			? [
					[
						strong('Doubt: '),
						`About ${Math.round(finding.sure * 100)} % likely, given how well your answers are known.`,
					],
				]
			: []),
		...(finding.assumed.length > 0 ? [[strong('Assumed: '), usualInBrief(finding.assumed, assessment)]] : []),
		...cautionDetail(finding.cautions, assessment),
	];
	const text = [strong(`${what}. `), `${placeWords[mark.access]}. ${first ?? ''}`];
	return { what, mark, cautions: finding.cautions, task: { is: 'task', text, details, mark } };
}

/** A rule that could not be worked out stands in the way like a missing answer. */
function unworked(finding: Finding, stage: Stage, assessment: Assessment): Line {
	const mark = markOf(finding, stage, assessment);
	const what = `${finding.title}: not worked out`;
	const text = [strong(`${what}. `), `Look at the answers behind it. ${finding.why}`];
	const details = cautionDetail(finding.cautions, assessment);
	return { what, mark, cautions: finding.cautions, task: { is: 'task', text, details, mark } };
}

/** So many answers of one topic, to be had in one place at one time, are one card. */
const cardFrom = 3;

/** Answers to find out, most urgent first: what one look gives together. */
function cardsOf(asked: readonly FindOut[]): FindOut[][] {
	const keyOf = ({ question }: FindOut) =>
		[question.section, question.topic, question.access, question.known_from].join();
	const cards = new Map<string, FindOut[]>();
	for (const findOut of asked) cards.set(keyOf(findOut), [...(cards.get(keyOf(findOut)) ?? []), findOut]);
	return asked.flatMap(findOut => {
		const card = cards.get(keyOf(findOut))!;
		if (card.length < cardFrom) return [[findOut]];
		return card[0] === findOut ? [card] : [];
	});
}

/** Missing answers that are found out together, and what they settle. */
function asking(card: readonly FindOut[], stage: Stage, assessment: Assessment): Line {
	const questions = card.map(({ question }) => question);
	const [first] = questions as [Question, ...Question[]];
	const titles = [...new Set(card.flatMap(({ settles }) => settles.map(({ title }) => lower(title))))];
	const more = titles.length > 3 ? `; and ${count(titles.length - 3, 'more line')}` : '';
	const settles = [strong('Settles: '), `${titles.slice(0, 3).join('; ')}${more}.`];
	const cautions = [...new Set(questions.flatMap(question => question.cautions))];
	const ask = ({ id, ask }: Question): Inline[] => [`${assessment.wording.say(ask)} (`, code(id), ')'];
	const mark = { key: questions.map(({ id }) => id).join(' '), stage, access: placeAt(stage, first.access) };
	const lead = strong(`Find out ${whenAnswerable(first)}: `);
	const together = questions.length > 1;
	return {
		what: together
			? `${upper(first.topic)}: ${questions.length} answers to find out`
			: assessment.wording.say(first.ask),
		mark,
		cautions,
		task: {
			is: 'task',
			text: together
				? [lead, `${first.topic}. ${placeWords[mark.access]}. `, ...settles]
				: [lead, ...ask(first), ' ', ...settles],
			details: [...(together ? questions.map(ask) : []), ...cautionDetail(cautions, assessment)],
			close: true,
			mark,
		},
	};
}

/** Where all that it rests on is measured already. */
const closer = 'Only a closer measurement settles it: put it into the sheet with how far off it may be (give or take).';

/** A line that holds on what nobody found out, and what would settle it. */
function notProved(finding: Finding, stage: Stage, assessment: Assessment): Line {
	const mark = markOf(finding, stage, assessment);
	const what = `Not ruled out: ${lower(titleOf(finding, assessment))}`;
	const rests =
		finding.sure !== null && finding.sure < sureEnough
			? `It is in order in ${Math.round(finding.sure * 100)} of 100 cases, as the answers are known.`
			: 'In order by what is usual; nobody has looked here.';
	const settles = wouldSettle(finding, assessment).flatMap(({ id }, index): Inline[] => [
		index > 0 ? ', ' : '',
		code(id),
	]);
	const text = [
		strong(`${what}. `),
		rests,
		...(settles.length > 0 ? [' ', strong('Settled by: '), ...settles, '.'] : [' ', closer]),
	];
	return { what, mark, cautions: [], task: { is: 'task', text, details: [], close: true, mark } };
}

/** Before it goes in, all that is at the engine is on the bench. */
const placeAt = (stage: Stage, access: Access): Access =>
	stage !== 'install' || access === 'papers' || access === 'heads-off' ? access : 'bench';

const markOf = (finding: Finding, stage: Stage, assessment: Assessment): TaskMark => ({
	key: finding.subject === null ? finding.rule : `${finding.rule} ${finding.subject}`,
	stage,
	access: placeAt(stage, accessOf(finding, assessment)),
});

function cautionDetail(ids: readonly string[], { model }: Assessment): Inline[][] {
	const cautions = briefCautions(model.rulebook, ids);
	return cautions.length > 0 ? [cautions] : [];
}
