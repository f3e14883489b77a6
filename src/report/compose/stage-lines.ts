import type { Assessment } from '../../audit/assess.ts';
import type { Finding } from '../../audit/audit.ts';
import type { FindOut } from '../../audit/find-out.ts';
import { courseOf, isListed, shownAt } from '../../audit/stages.ts';
import { type Stage, stages } from '../../rulebook/rulebook.ts';
import { count, lower, stageBy } from './names.ts';

/** What is open at a stage, in the order in which it is listed. */
export interface StageLines {
	readonly stage: Stage;
	readonly ready: boolean;
	readonly fails: readonly Finding[];
	readonly broken: readonly Finding[];
	readonly asked: readonly FindOut[];
	/** Lines that hold on what nobody found out. */
	readonly unproved: readonly Finding[];
	/** Lines that only the stage itself can prove: they hold nothing up. */
	readonly during: readonly Finding[];
	/** How many lines wait for answers that an earlier stage, or another line of this one, asks for. */
	readonly waits: number;
}

/** The open lines of each stage. A stage that nothing is open in has none. */
export function stageLines(
	{ audit, state }: Pick<Assessment, 'audit' | 'state'>,
	open: readonly FindOut[],
): StageLines[] {
	const course = courseOf(state);
	return stages.map(stage => {
		const shown = audit.findings.filter(finding => shownAt(finding.stage, course) === stage);
		const own = shown.filter(isListed);
		const asked = open.filter(findOut => findOut.stage === stage);
		const here = new Set(asked.map(({ question }) => question.id));
		const of = (word: Finding['verdict']) => own.filter(({ verdict }) => verdict === word);
		return {
			stage,
			ready: audit.stages.some(row => row.stage === stage && row.ready),
			fails: of('fails'),
			broken: of('not-evaluated'),
			asked,
			unproved: own.filter(({ unproved }) => unproved),
			during: shown.filter(({ prove_during, not_wanted }) => prove_during && !not_wanted),
			waits: of('cannot-tell').filter(({ missing }) => !missing.some(answer => here.has(answer))).length,
		};
	});
}

/** The stage to work for: the first that is not ready; null when all are. */
export const nextStage = (lines: readonly StageLines[]): Stage | null =>
	lines.find(({ ready }) => !ready)?.stage ?? null;

/** Whether nothing of a stage is open. */
export const isEmpty = ({ fails, broken, asked, unproved, during, waits }: StageLines): boolean =>
	fails.length + broken.length + asked.length + unproved.length + during.length + waits === 0;

/** How much is open at a stage: `14 to do, 6 to find out`. */
export function openIn({ fails, broken, asked, unproved, during, waits }: StageLines): string {
	const toDo = fails.length + broken.length;
	const counts = [
		toDo > 0 ? `${toDo} to do` : '',
		asked.length > 0 ? `${asked.length} to find out` : '',
		unproved.length > 0 ? `${unproved.length} to prove` : '',
	].filter(Boolean);
	if (counts.length === 0 && waits === 0) return `${count(during.length, 'line')} to be proved during it`;
	return counts.length > 0 ? counts.join(', ') : `${count(waits, 'line waits', 'lines wait')} for answers`;
}

/** What comes next, and how much of it is open: `before it fires: 14 to do, 6 to find out`. */
export function nextWords(lines: readonly StageLines[], assessment: Pick<Assessment, 'state'>): string {
	const next = lines.find(({ ready }) => !ready);
	if (!next) return 'nothing is held up, as far as the answers go';
	return `${lower(stageBy(next.stage, assessment))}: ${openIn(next)}`;
}
