import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import type { FindOut } from '../../audit/find-out.ts';
import { standsInTheWay } from '../../audit/stages.ts';
import { type Stage, stages } from '../../rulebook/rulebook.ts';

/** What is open at a stage, in the order in which it is listed. */
export interface StageLines {
	readonly stage: Stage;
	readonly ready: boolean;
	readonly fails: readonly Finding[];
	readonly broken: readonly Finding[];
	readonly asked: readonly FindOut[];
	/** How many lines wait for answers that an earlier stage, or another line of this one, asks for. */
	readonly waits: number;
}

/** The open lines of each stage. A stage that nothing is open in has none. */
export function stageLines({ audit }: Pick<Assessment, 'audit'>, open: readonly FindOut[]): StageLines[] {
	return stages.map(stage => {
		const own = audit.findings.filter(finding => finding.stage === stage && standsInTheWay(finding));
		const asked = open.filter(findOut => findOut.stage === stage);
		const here = new Set(asked.map(({ question }) => question.id));
		const of = (word: Finding['verdict']) => own.filter(({ verdict }) => verdict === word);
		return {
			stage,
			ready: audit.stages.some(row => row.stage === stage && row.ready),
			fails: of('fails'),
			broken: of('not-evaluated'),
			asked,
			waits: of('cannot-tell').filter(({ missing }) => !missing.some(answer => here.has(answer))).length,
		};
	});
}

/** The stage to work for: the first that is not ready; null when all are. */
export const nextStage = (lines: readonly StageLines[]): Stage | null =>
	lines.find(({ ready }) => !ready)?.stage ?? null;

export const isEmpty = ({ fails, broken, asked, waits }: StageLines): boolean =>
	fails.length + broken.length + asked.length + waits === 0;
