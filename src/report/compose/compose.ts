import type { Assessment } from '../../audit/assess.ts';
import { fittedProcedures } from '../../audit/procedures.ts';
import type { Block, Document } from '../document.ts';
import { answers } from './answers.ts';
import { cautions } from './cautions.ts';
import type { ReportContext } from './context.ts';
import { findOuts } from './find-out.ts';
import { head } from './head.ts';
import { ladder } from './ladder.ts';
import { list } from './list.ts';
import { next } from './next.ts';
import { numbers } from './numbers.ts';
import { parts } from './parts.ts';
import { plugsPart } from './plugs.ts';
import { procedures } from './procedures.ts';
import { readingCard } from './readings.ts';
import { since } from './since.ts';
import { unjudged } from './unjudged.ts';
import { wiring } from './wiring.ts';

/** The parts of an audit, in the order in which they are needed at the car. A part without content leaves itself out. */
const sections: readonly ((told: ReportContext) => Block[])[] = [
	head,
	cautions,
	list,
	ladder,
	readingCard,
	procedures,
	plugsPart,
	wiring,
	next,
	parts,
	since,
	numbers,
	answers,
	unjudged,
];

/** An audit as a document. Pictures are drawn only where they will be seen. */
export function composeAudit(assessment: Assessment, pictures = true): Document {
	const told = { ...assessment, open: findOuts(assessment), procedures: fittedProcedures(assessment), pictures };
	return { title: `Swap audit: ${assessment.sheet.name}`, blocks: sections.flatMap(section => section(told)) };
}
