import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import { valueIn } from '../../audit/conditions.ts';
import { standsInTheWay } from '../../audit/stages.ts';
import { type Stage, stages } from '../../rulebook/rulebook.ts';
import { type Block, code, heading, type Inline, paragraph, strong } from '../document.ts';
import type { ReportContext } from './context.ts';
import type { FindOut } from './find-out.ts';
import { cautionWords, count, lower, stageBy } from './names.ts';

/** The list: a stage at a time, what is wrong by priority, then what has to be found out. */
export function list(told: ReportContext): Block[] {
	const parts = stages.flatMap(stage => stagePart(stage, told));
	const nothing = paragraph(
		'Nothing is known to be wrong, and nothing that could hurt waits for an answer. That is not proof: it is what the answers say.',
	);
	return [heading(2, 'The list'), ...(parts.length > 0 ? parts : [nothing])];
}

function stagePart(stage: Stage, told: ReportContext): Block[] {
	const own = told.audit.findings.filter(finding => finding.stage === stage && standsInTheWay(finding));
	if (own.length === 0) return [];
	const asked = told.open.filter(findOut => findOut.stage === stage);
	const here = new Set(asked.map(({ question }) => question.id));
	const waits = own.filter(
		({ verdict, missing }) => verdict === 'cannot-tell' && !missing.some(answer => here.has(answer)),
	).length;
	return [
		heading(3, stageBy(stage, told)),
		...own.filter(({ verdict }) => verdict === 'fails').map(finding => task(finding, told)),
		...own.filter(({ verdict }) => verdict === 'not-evaluated').map(broken),
		...asked.map(findOut => line(findOut, told)),
		...(waits > 0
			? [paragraph(`${count(waits, 'more line waits', 'more lines wait')} here for answers that are asked for above.`)]
			: []),
	];
}

function task(finding: Finding, assessment: Assessment): Block {
	const [first, ...rest] = finding.do;
	const cautions = cautionWords(assessment.model.rulebook, finding.cautions);
	const about = finding.subject === null ? '' : ` (${subjectWords(finding, assessment)})`;
	const details: Inline[][] = [
		...rest.map((step): Inline[] => [step]),
		...(finding.why ? [[strong('Why: '), finding.why]] : []),
		...(finding.prove ? [[strong('Done when: '), finding.prove]] : []),
		...(finding.sure !== null && finding.sure < 0.9
			? [[strong('Doubt: '), `${Math.round(finding.sure * 100)} in 100 sure, as the answers are known.`]]
			: []),
		...(finding.assumed.length > 0 ? [[strong('Assumed: '), inBrief(finding.assumed, assessment)]] : []),
		...(cautions.length > 0 ? [cautions] : []),
	];
	return { is: 'task', text: [strong(`${finding.title}${about}. `), first ?? ''], details };
}

/** A rule that could not be worked out stands in the way like a missing answer. */
const broken = ({ title, why }: Finding): Block => ({
	is: 'task',
	text: [strong(`${title}: not worked out. `), `Look at the answers behind it. ${why}`],
	details: [],
});

/** A missing answer, and what it settles. */
function line({ question, settles }: FindOut, { model }: Assessment): Block {
	const titles = [...new Set(settles.map(({ title }) => lower(title)))];
	const more = titles.length > 3 ? `; and ${count(titles.length - 3, 'more line')}` : '';
	const cautions = cautionWords(model.rulebook, question.cautions);
	return {
		is: 'task',
		text: [
			strong('Find out: '),
			`${question.ask} (`,
			code(question.id),
			') ',
			strong('Settles: '),
			`${titles.slice(0, 3).join('; ')}${more}.`,
			...(cautions.length > 0 ? [' ', ...cautions] : []),
		],
		details: [],
	};
}

/** The part a finding speaks of, in the words of its question. */
export function subjectWords(
	{ rule, subject }: Pick<Finding, 'rule' | 'subject'>,
	{ model }: Pick<Assessment, 'model'>,
): string {
	const each = model.rulebook.rules.find(({ id }) => id === rule)?.each;
	if (!each || subject === null) return subject ?? '';
	const question = model.rulebook.questions.find(({ id }) => id === each.answer);
	return each.over === 'cylinders' ? `cylinder ${subject}` : (question?.choices[subject] ?? subject);
}

/** As many usual values as a line on the wall names; of more it says how many. */
const mostAssumed = 6;

const inBrief = (assumed: readonly string[], assessment: Assessment): string =>
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
	const [section = '', own = plain] = plain.split('.');
	// A single word says too little away from its section.
	const name = own.includes('_') ? own.replaceAll('_', ' ') : `${section.replace(/s$/, '')} ${own}`;
	const value = valueIn(state, plain);
	const shown = wording.show(plain, value);
	return [name, shown && typeof value === 'string' ? `(${shown})` : shown, from].filter(Boolean).join(' ');
}
