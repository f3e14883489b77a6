import type { Assessment } from '../../audit/assess.ts';
import { type FindOut, proveDuring } from '../../audit/find-out.ts';
import { type FittedProcedure, type FittedStep, fittedProcedures } from '../../audit/procedures.ts';
import { valueIn } from '../../graph/solve.ts';
import { type Rulebook, type Stage, stages } from '../../rulebook/rulebook.ts';
import type { Wording } from '../../wording/template.ts';
import { whenAnswerable } from '../../wording/when.ts';
import {
	type Block,
	code,
	type Document,
	heading,
	type Inline,
	listed,
	paragraph,
	type Section,
	strong,
} from '../document.ts';
import { cautionsInFull } from './cautions.ts';
import type { ReportContext } from './context.ts';
import { cautionWords, lower, upper } from './names.ts';

/** The first stage that still lies before a car, by how far it is (build.stage): one that drives needs no first crank. */
const ahead: Readonly<Record<string, Stage>> = { 'has-fired': 'move', drives: 'boost' };

/** The procedures of the next stage, or of the first one that the car has not been through. */
export function nextProcedures({ next, procedures, state }: ReportContext): FittedProcedure[] {
	// While the engine is on the stand there is nothing to turn.
	if (next === null || next === 'install') return [];
	const from = ahead[String(valueIn(state, 'build.stage'))] ?? next;
	const at = Math.max(stages.indexOf(next), stages.indexOf(from));
	const first = procedures.find(({ stage }) => stages.indexOf(stage) >= at);
	return procedures.filter(({ stage }) => stage === first?.stage);
}

/** The day itself: the next procedures, fitted to the answers. */
export function procedure(context: ReportContext): Block[] {
	const fitted = nextProcedures(context).flatMap(one => day(one, context));
	return fitted.length > 0 ? [heading(2, 'The day itself'), ...fitted] : [];
}

/** The procedures of the other stages. */
export function otherProcedures(context: ReportContext): Section | null {
	const near = nextProcedures(context);
	const others = context.procedures.filter(one => !near.includes(one));
	if (others.length === 0) return null;
	return { title: 'The other procedures', compose: () => others.flatMap(one => day(one, context)) };
}

/** One stage's procedures alone, with the cautions that their steps name; words instead where there are none. */
export function composeDay(stage: Stage, assessment: Assessment): Document {
	const fitted = fittedProcedures(assessment).filter(one => one.stage === stage);
	const { model, wording } = assessment;
	const shown = { during: proveDuring(assessment), procedures: fitted, model, wording };
	const title = `The day itself: ${assessment.sheet.name}`;
	const none = paragraph('There is no procedure for this stage of this build.');
	const named = fitted.flatMap(({ steps }) => steps.flatMap(step => step.cautions));
	return {
		title,
		blocks: [
			heading(1, title),
			...(fitted.length > 0 ? fitted.flatMap(one => day(one, shown)) : [none]),
			...cautionsInFull(named, assessment),
		],
	};
}

/** One whose stage is not ready says so first. */
function day(
	{ title, stage, ready, steps }: FittedProcedure,
	{ during, procedures, model, wording }: Pick<ReportContext, 'during' | 'procedures' | 'model' | 'wording'>,
): Block[] {
	// A stage may have several; what it shows is read in the last of them.
	const last = procedures.findLast(other => other.stage === stage)?.title === title;
	const open = paragraph(strong('Not ready: '), 'the list has open lines for this point. Settle them first.');
	return [
		heading(3, upper(title)),
		...(ready ? [] : [open]),
		{ is: 'steps', items: steps.map(step => words(step, model.rulebook)) },
		...listed(
			[paragraph(strong('To be proved during it'), ', for it shows only then:')],
			last ? during.filter(findOut => findOut.stage === stage).map(findOut => proof(findOut, wording)) : [],
		),
	];
}

/** A reading that only this day gives, and what it settles. */
const proof = ({ question, settles }: FindOut, wording: Wording): Inline[] => [
	`${wording.say(question.ask)} (`,
	code(question.id),
	`), ${whenAnswerable(question)}. Settles: ${[...new Set(settles.map(({ title }) => lower(title)))].join('; ')}.`,
];

function words(step: FittedStep, rulebook: Rulebook): Inline[] {
	const cautions = cautionWords(rulebook, step.cautions);
	return [
		step.do,
		...(step.read ? [' ', strong('Read: '), step.read] : []),
		...(step.stop ? [' ', strong('Stop if: '), step.stop] : []),
		...(cautions.length > 0 ? [' ', ...cautions] : []),
	];
}
