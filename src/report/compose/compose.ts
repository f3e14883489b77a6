import type { Assessment } from '../../audit/assess.ts';
import { findOuts, proveDuring } from '../../audit/find-out.ts';
import { fittedProcedures } from '../../audit/procedures.ts';
import { stages } from '../../sheet/stage.ts';
import { type Block, type Document, heading, listed, paragraph, type Section } from '../document.ts';
import { answers } from './answers.ts';
import { boostStep } from './boost-step.ts';
import { cautions } from './cautions.ts';
import type { ReportContext } from './context.ts';
import { ladder } from './ladder.ts';
import { list } from './list.ts';
import { later, next as measureNext } from './next.ts';
import { numbers } from './numbers.ts';
import { odd } from './odd.ts';
import { pageOne } from './page-one.ts';
import { parts } from './parts.ts';
import { plugsPart } from './plugs.ts';
import { otherProcedures, procedure } from './procedures.ts';
import { readingCard } from './readings.ts';
import { since } from './since.ts';
import { nextStage, type StageLines, stageLines } from './stage-lines.ts';
import { linesOf } from './tasks.ts';
import { unjudged } from './unjudged.ts';
import { wiring } from './wiring.ts';

type Part = (context: ReportContext) => Block[];

const nextBoost: Part = ({ step, wording }) => boostStep(step, wording);

/** The parts of an audit, in the order in which they are needed at the car. A part without content leaves itself out. */
const body: readonly Part[] = [
	odd,
	list,
	ladder,
	nextBoost,
	readingCard,
	procedure,
	plugsPart,
	measureNext,
	parts,
	cautions,
];

/** What is looked up: kept in a second file. Null: there is nothing of it. */
const lookedUp: readonly ((context: ReportContext) => Section | null)[] = [
	numbers,
	answers,
	unjudged,
	later,
	otherProcedures,
	wiring,
];

/**
 * What of an audit will be seen; what will not is not composed. Without details a page has their headings, and of each later stage
 * how much is open.
 */
interface Shown {
	readonly pictures: boolean;
	readonly details: boolean;
}

/** An audit as a document. */
export function composeAudit(
	assessment: Assessment,
	{ pictures, details }: Shown = { pictures: true, details: true },
): Document {
	const open = findOuts(assessment);
	const lines = stageLines(assessment, open);
	const procedures = fittedProcedures(assessment);
	const next = nextStage(lines);
	const isSeen = ({ stage }: StageLines) => details || next === null || stages.indexOf(stage) <= stages.indexOf(next);
	const context = {
		...assessment,
		open,
		lines,
		next,
		tasks: new Map(lines.filter(isSeen).map(own => [own.stage, linesOf(own, assessment)])),
		during: proveDuring(assessment),
		procedures,
		pictures,
	};
	const sections = lookedUp.flatMap(part => part(context) ?? []);
	// After a recheck, what changed is what somebody wants to see first.
	const blocks = [
		...pageOne(context),
		...since(context),
		...body.flatMap(part => part(context)),
		...contents(sections),
	];
	return { title: `Swap audit: ${assessment.sheet.name}`, blocks, details: details ? sections.flatMap(whole) : [] };
}

const whole = ({ title, compose }: Section): Block[] => [heading(2, title), ...compose()];

/** A line for each part that is kept apart. */
const contents = (sections: readonly Section[]): Block[] =>
	listed(
		[heading(2, 'In the details'), paragraph('To look up: the file of details next to this one, or --whole.')],
		sections.map(({ title }) => [{ part: title }]),
	);
