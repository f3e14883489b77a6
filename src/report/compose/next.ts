import type { Assessment } from '../../audit/assess.ts';
import type { FindOut } from '../../audit/find-out.ts';
import { stages } from '../../rulebook/rulebook.ts';
import { wholeHow } from '../../sheet/how.ts';
import type { Effort } from '../../sheet/question.ts';
import { whenAnswerable } from '../../wording/when.ts';
import { type Block, code, heading, type Inline, listed, listSection, type Section, strong } from '../document.ts';
import type { ReportContext } from './context.ts';
import { upper } from './names.ts';

/** As many as one evening holds. */
const most = 12;

const efforts: Readonly<Record<Effort, string>> = {
	known: 'you know it',
	paper: 'look it up',
	look: 'just look',
	gauge: 'a gauge or a meter',
	test: 'a test',
};

/** A pin has no question in the rulebook. */
const pinQuestion = (answer: string) => ({
	ask: `${upper(answer.replace(/^plugs: /, ''))}: what does it carry?`,
	how: 'Battery off, plugs apart. Meter from the pin to the part that you think of: under 1 ohm is it. A diagram of that very year may say it.',
});

/** The answers that could turn the most lines, each with how to get it. */
export function worthMeasuring({ audit, model, wording }: Assessment): Block[] {
	const steps = audit.next.slice(0, most).map(({ answer, why, effort }): Inline[] => {
		const question = model.judge.questions.get(answer);
		const { ask, how } = question ?? pinQuestion(answer);
		const ways = question ? wholeHow(question, wording.units) : [how];
		const when = question ? whenAnswerable(question) : 'now';
		return [
			strong(wording.say(ask)),
			` ${upper(when)}: ${efforts[effort]}. ${upper(why)}. `,
			strong('How: '),
			ways.join(' '),
		];
	});
	return steps.length > 0 ? [heading(2, 'Measure next'), { is: 'steps', items: steps }] : [];
}

/** What to measure next, and how to get every other answer that the list asks for at the next stage. */
export function next(context: ReportContext): Block[] {
	const first = worthMeasuring(context);
	return [
		...first,
		...listed(
			[...(first.length > 0 ? [] : [heading(2, 'Measure next')]), heading(3, 'How to find out what the list asks for')],
			openIn(context, isNear(context)).map(findOut => howTo(findOut, context)),
			'small',
		),
	];
}

/** How to get the answers that later stages ask for. */
export function later(context: ReportContext): Section | null {
	const near = isNear(context);
	const rest = openIn(context, findOut => !near(findOut));
	return listSection('How to find out the rest', rest, findOut => howTo(findOut, context));
}

const isNear =
	({ next }: ReportContext) =>
	({ stage }: FindOut): boolean =>
		next === null || stages.indexOf(stage) <= stages.indexOf(next);

/** What the list asks for and `worthMeasuring` does not name. */
function openIn({ audit, open }: ReportContext, wanted: (findOut: FindOut) => boolean): FindOut[] {
	const named = new Set(audit.next.slice(0, most).map(({ answer }) => answer));
	return open.filter(findOut => !named.has(findOut.question.id) && wanted(findOut));
}

const howTo = ({ question }: FindOut, { wording }: ReportContext): Inline[] => [
	code(question.id),
	` ${wholeHow(question, wording.units).join(' ')}`,
];
