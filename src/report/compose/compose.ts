import type { Assessment } from '../../audit/assess.ts';
import { findOuts, proveDuring } from '../../audit/find-out.ts';
import { fittedProcedures } from '../../audit/procedures.ts';
import { type Block, type Document, heading, listed, paragraph } from '../document.ts';
import { answers } from './answers.ts';
import { boostStep } from './boost-step.ts';
import { cautions } from './cautions.ts';
import type { ReportContext } from './context.ts';
import { ladder } from './ladder.ts';
import { list } from './list.ts';
import { later, next } from './next.ts';
import { numbers } from './numbers.ts';
import { odd } from './odd.ts';
import { pageOne } from './page-one.ts';
import { parts } from './parts.ts';
import { plugsPart } from './plugs.ts';
import { otherProcedures, procedure } from './procedures.ts';
import { readingCard } from './readings.ts';
import { since } from './since.ts';
import { nextStage, stageLines } from './stage-lines.ts';
import { unjudged } from './unjudged.ts';
import { wiring } from './wiring.ts';

type Part = (context: ReportContext) => Block[];

const nextBoost: Part = ({ step, wording }) => boostStep(step, wording);

/** The parts of an audit, in the order in which they are needed at the car. A part without content leaves itself out. */
const body: readonly Part[] = [odd, list, ladder, nextBoost, readingCard, procedure, plugsPart, next, parts, cautions];

/** What is looked up: kept in a second file. */
const lookedUp: readonly Part[] = [numbers, answers, unjudged, later, otherProcedures, wiring];

/** An audit as a document. Pictures are drawn only where they will be seen. */
export function composeAudit(assessment: Assessment, pictures = true): Document {
	const open = findOuts(assessment);
	const lines = stageLines(assessment, open);
	const procedures = fittedProcedures(assessment);
	const context = {
		...assessment,
		open,
		lines,
		next: nextStage(lines),
		during: proveDuring(assessment),
		procedures,
		pictures,
	};
	const all = (sections: readonly Part[]) => sections.flatMap(section => section(context));
	const details = all(lookedUp);
	// After a recheck, what changed is what somebody wants to see first.
	const blocks = [...pageOne(context), ...since(context), ...all(body), ...contents(details)];
	return { title: `Swap audit: ${assessment.sheet.name}`, blocks, details };
}

/** A line for each part that is kept apart. */
const contents = (details: readonly Block[]): Block[] =>
	listed(
		[heading(2, 'In the details'), paragraph('To look up: the file of details next to this one, or --whole.')],
		details.flatMap(block => (block.is === 'heading' && block.level === 2 ? [[{ part: block.text }]] : [])),
	);
