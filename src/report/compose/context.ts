import type { Assessment } from '../../audit/assess.ts';
import type { FindOut } from '../../audit/find-out.ts';
import type { FittedProcedure } from '../../audit/procedures.ts';
import type { Stage } from '../../rulebook/rulebook.ts';
import type { StageLines } from './stage-lines.ts';
import type { Line } from './tasks.ts';

/** An audit that is being printed, with what several of its parts use. */
export interface ReportContext extends Assessment {
	readonly open: readonly FindOut[];
	readonly lines: readonly StageLines[];
	/** The stage to work for; null when all are ready. */
	readonly next: Stage | null;
	/** The lines of the list by stage; of a later stage only where somebody can open it. */
	readonly tasks: ReadonlyMap<Stage, readonly Line[]>;
	/** What can only be proved during a stage. */
	readonly during: readonly FindOut[];
	readonly procedures: readonly FittedProcedure[];
	/** Whether pictures are seen where it is printed. */
	readonly pictures: boolean;
}
