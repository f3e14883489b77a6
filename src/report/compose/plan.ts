import type { Assessment } from '../../audit/assess.ts';
import { type PartToGet, partsFor } from '../../audit/parts.ts';
import type { Evening, Evenings } from '../../audit/plan.ts';
import type { PlanLine } from '../../audit/plan-lines.ts';
import { sureEnough } from '../../audit/unproved.ts';
import { valueIn } from '../../graph/solve.ts';
import type { Stage, VerdictWord } from '../../rulebook/rulebook.ts';
import { wholeHow } from '../../sheet/how.ts';
import { placeWords } from '../../wording/places.ts';
import { whenAnswerable } from '../../wording/when.ts';
import { type Block, code, type Document, heading, type Inline, paragraph, strong } from '../document.ts';
import { cautionsInFull } from './cautions.ts';
import { checkTasks, noChecks } from './intervals.ts';
import { cautionWords, count, lower, stageBy } from './names.ts';
import { subjectWords } from './subjects.ts';

/** A plan with what its reports need. */
export interface Plan extends Evenings {
	readonly stage: Stage | null;
	/** The time there is in an evening, min. */
	readonly minutes: number;
	/** Ids of parts at hand. */
	readonly have: ReadonlySet<string>;
}

export const planFormat = 'swap-audit/plan';
export const planVersion = 1;

/** The parts that an evening's work asks for and that are not at hand. */
function partsOf({ lines }: Evening, { have }: Plan, { model }: Assessment): PartToGet[] {
	const sure = lines.flatMap(({ finding }) =>
		finding?.verdict === 'fails' && (finding.sure === null || finding.sure >= sureEnough) ? [finding] : [],
	);
	return partsFor(sure, model.rulebook).filter(({ id }) => !have.has(id));
}

/** A plan as other programs read it; minutes. */
export const planAsData = (plan: Plan, assessment: Assessment) => ({
	format: planFormat,
	version: planVersion,
	sheet: assessment.audit.sheet,
	date: assessment.audit.date,
	stage: plan.stage,
	evenings: plan.evenings.map(evening => ({
		access: evening.access,
		minutes: evening.minutes,
		parts: partsOf(evening, plan, assessment).map(({ words }) => words),
		lines: evening.lines.map(({ finding, findOut, minutes, needs }) => ({
			...(finding ? { rule: finding.rule } : { answer: findOut!.question.id }),
			subject: finding?.subject ?? null,
			minutes,
			needs,
		})),
	})),
});

/** A plan to read in the garage: an evening a part, what to get before it, its lines to tick. */
export function composePlan(plan: Plan, assessment: Assessment): Document {
	const { audit } = assessment;
	const { stage, evenings, waiting } = plan;
	const title = `Evenings: ${audit.sheet}`;
	const head = [heading(1, title), paragraph(`${audit.date}. ${lead(plan, assessment)}`)];
	const lines = evenings.flatMap(evening => evening.lines);
	const parts = firstAsked(plan, assessment);
	const drives = valueIn(assessment.state, 'build.stage') === 'drives';
	const checks = drives || stage === null ? checkTasks(assessment, new Set(lines.map(({ key }) => key))) : noChecks;
	if (stage === null)
		return { title, blocks: [...head, ...checks.blocks, ...cautionsInFull(checks.cautions, assessment)] };
	const named = lines.flatMap(({ finding, findOut }) => (finding ?? findOut!.question).cautions);
	return {
		title,
		blocks: [
			...head,
			...evenings.flatMap((evening, at) => eveningPart(evening, at, parts[at]!, plan, assessment)),
			...(waiting.length > 0 ? [paragraph(elsewhere(waiting.length))] : []),
			...checks.blocks,
			...cautionsInFull([...named, ...checks.cautions], assessment),
		],
	};
}

const elsewhere = (waiting: number): string =>
	`${count(waiting, 'more line')} ${waiting === 1 ? 'is' : 'are'} done elsewhere, or after work elsewhere: the plan without a place shows all.`;

function lead({ stage, evenings, minutes }: Plan, assessment: Assessment): string {
	if (stage === null) return 'Nothing is known to be open. That is not proof: it is what the answers say.';
	const lines = evenings.reduce((sum, evening) => sum + evening.lines.length, 0);
	return `${stageBy(stage, assessment)}: ${count(lines, 'line')} in ${count(evenings.length, 'evening')} of ${minutes} minutes. Times are usual hands-on times; you may be slower, and nothing here is worth hurrying.`;
}

/** What has to be taken off first takes time of its own. */
const opening: Partial<Record<Evening['access'], string>> = {
	'transmission-out': 'Taking the transmission out, and putting it back, is an evening of its own and is not counted.',
	'heads-off': 'Taking the heads off is counted with the first line that asks for it.',
	tank: 'A tank that has to come down is drained first, outdoors.',
};

/** The parts to get before each evening: one that serves every line is got once, before the first of them. */
function firstAsked(plan: Plan, assessment: Assessment): PartToGet[][] {
	const shared = new Set(assessment.model.rulebook.parts.filter(({ plural }) => plural === null).map(({ id }) => id));
	const had = new Set<string>();
	return plan.evenings.map(evening => {
		const parts = partsOf(evening, plan, assessment).filter(({ id }) => !had.has(id));
		for (const { id } of parts) if (shared.has(id)) had.add(id);
		return parts;
	});
}

function eveningPart(
	evening: Evening,
	at: number,
	parts: readonly PartToGet[],
	plan: Plan,
	assessment: Assessment,
): Block[] {
	const { access, minutes, lines } = evening;
	const over = minutes > plan.minutes ? ', longer than the time you gave: one line alone' : '';
	const note = evening.waits ? 'Answers only: wait with them until it is open for something else.' : opening[access];
	return [
		heading(2, `${at + 1}. ${placeWords[access]} (${minutes} min${over})`),
		...(parts.length > 0 ? [paragraph(strong('Get first: '), `${parts.map(({ words }) => words).join('; ')}.`)] : []),
		...(note ? [paragraph(note)] : []),
		...lines.map(line => task(line, access, assessment)),
	];
}

/** What stands before the title of a line that is not known to be wrong. */
const open: Partial<Record<VerdictWord, string>> = {
	holds: 'Not ruled out',
	'cannot-tell': 'Not known',
	'not-evaluated': 'Not worked out',
};

/** A line to tick; its place where it is not the evening's. */
function task(
	{ key, finding, findOut, minutes, access }: PlanLine,
	place: Evening['access'],
	assessment: Assessment,
): Block {
	const { rulebook } = assessment.model;
	const where = access === place ? '' : `${lower(placeWords[access])}, `;
	const time = ` (${where}${minutes} min)`;
	// The audit's own mark: a tick there is a tick here.
	const mark = { key, stage: (finding ?? findOut!).stage, access };
	if (findOut) {
		const { question, settles } = findOut;
		const titles = [...new Set(settles.map(({ title }) => lower(title)))];
		const more = titles.length > 2 ? `; and ${count(titles.length - 2, 'more line')}` : '';
		const cautions = cautionWords(rulebook, question.cautions);
		return {
			is: 'task',
			mark,
			text: [
				strong(`Find out ${whenAnswerable(question)}: `),
				`${assessment.wording.say(question.ask)} (`,
				code(question.id),
				`)${time}`,
			],
			details: [
				...wholeHow(question, assessment.wording.units).map((way): Inline[] => [way]),
				[strong('Settles: '), `${titles.slice(0, 2).join('; ')}${more}.`],
				...(cautions.length > 0 ? [cautions] : []),
			],
		};
	}
	const { verdict, prove, cautions, why } = finding!;
	const said = open[verdict];
	const title = said ? `${said}: ${lower(finding!.title)}` : finding!.title;
	const about = finding!.subject === null ? '' : `: ${subjectWords(finding!, assessment)}`;
	const named = cautionWords(rulebook, cautions);
	const steps =
		verdict === 'fails'
			? finding!.do
			: [verdict === 'holds' ? 'Look for yourself.' : `Look at the answers behind it. ${why}`];
	return {
		is: 'task',
		mark,
		text: [strong(`${title}${about}.`), time],
		details: [
			...(named.length > 0 ? [named] : []),
			...steps.map((step): Inline[] => [step]),
			...(prove ? [[strong('Done when: '), prove]] : []),
		],
	};
}
