import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import { standsInTheWay } from '../../audit/stages.ts';
import { type Stage, stages } from '../../rulebook/rulebook.ts';
import { type Block, heading, type Inline, paragraph, strong } from '../document.ts';
import { before, count } from './names.ts';

/** The list: a stage at a time, what is wrong by priority, then what has to be found out. */
export function list(assessment: Assessment): Block[] {
	const asked = new Set<string>();
	const parts = stages.flatMap(stage => stagePart(stage, assessment, asked));
	const nothing = paragraph(
		'Nothing is known to be wrong, and nothing that could hurt waits for an answer. That is not proof: it is what the answers say.',
	);
	return [heading(2, 'The list'), ...(parts.length > 0 ? parts : [nothing])];
}

function stagePart(stage: Stage, assessment: Assessment, asked: Set<string>): Block[] {
	const own = assessment.audit.findings.filter(finding => finding.stage === stage);
	const tasks = own.filter(({ verdict }) => verdict === 'fails').map(finding => task(finding, assessment));
	const open = findOut(
		own.filter(finding => finding.verdict === 'cannot-tell' && standsInTheWay(finding)),
		assessment,
		asked,
	);
	return tasks.length + open.length > 0 ? [heading(3, before[stage]), ...tasks, ...open] : [];
}

function task(finding: Finding, assessment: Assessment): Block {
	const { model } = assessment;
	const [first, ...rest] = finding.do;
	const cautions = model.rulebook.cautions.filter(({ id }) => finding.cautions.includes(id)).map(({ title }) => title);
	const about = finding.subject === null ? '' : ` (${subjectWords(finding, assessment)})`;
	const details: Inline[][] = [
		...rest.map((step): Inline[] => [step]),
		...(finding.why ? [[strong('Why: '), finding.why]] : []),
		...(finding.prove ? [[strong('Done when: '), finding.prove]] : []),
		...(finding.sure !== null && finding.sure < 0.9
			? [[strong('Doubt: '), `${Math.round(finding.sure * 100)} in 100 sure, as the answers are known.`]]
			: []),
		...(finding.assumed.length > 0 ? [[strong('Assumed: '), assumedWords(finding.assumed, assessment)]] : []),
		...(cautions.length > 0 ? [[strong('Caution: '), `${cautions.join('; ')}.`]] : []),
	];
	return { is: 'task', text: [strong(`${finding.title}${about}. `), first ?? ''], details };
}

/** The part a finding speaks of, in the words of its question. */
export function subjectWords({ rule, subject }: Finding, { model }: Assessment): string {
	const each = model.rulebook.rules.find(({ id }) => id === rule)?.each;
	if (!each || subject === null) return subject ?? '';
	const question = model.rulebook.questions.find(({ id }) => id === each.answer);
	return each.over === 'cylinders' ? `cylinder ${subject}` : (question?.choices[subject] ?? subject);
}

/** Usual values that went in, by what they stand for. */
export function assumedWords(assumed: readonly string[], { model }: Assessment): string {
	const named = assumed.map(id => {
		const [plain = id, from] = id.split(/ (?=\()/);
		const question = model.rulebook.questions.find(other => other.id === plain);
		const quantity = model.quantities.find(other => other.id === plain);
		return `${(question?.id ?? quantity?.id ?? plain).replace(/^[a-z]+\./, '').replaceAll('_', ' ')}${from ? ` ${from}` : ''}`;
	});
	return `usual values for ${named.join(', ')}.`;
}

/** A line a missing answer, with what it settles; each is asked once, in the first stage that waits for it. */
function findOut(waiting: readonly Finding[], { model }: Assessment, asked: Set<string>): Block[] {
	const byAnswer = new Map<string, Finding[]>();
	for (const finding of waiting) {
		for (const answer of finding.missing) byAnswer.set(answer, [...(byAnswer.get(answer) ?? []), finding]);
	}
	return [...byAnswer].flatMap(([answer, findings]): Block[] => {
		const question = model.rulebook.questions.find(({ id }) => id === answer);
		if (!question || asked.has(answer)) return [];
		asked.add(answer);
		const titles = [...new Set(findings.map(({ title }) => lower(title)))];
		const more = titles.length > 3 ? `, and ${count(titles.length - 3, 'more line')}` : '';
		const settles: Inline[] = [strong('Settles: '), `${titles.slice(0, 3).join('; ')}${more}.`];
		return [
			{
				is: 'task',
				text: [strong(`Find out (${question.topic}): `), question.ask],
				details: [[question.how], settles],
			},
		];
	});
}

const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
