import { type Stage, stages } from '../rulebook/rulebook.ts';
import type { Finding, StageReadiness } from './audit.ts';

/** Harms that make a verdict that cannot be told stand in the way. */
const serious: readonly string[] = ['person', 'engine', 'strands'];

/** Whether a finding keeps its stage from being ready. */
export function standsInTheWay({ verdict, harm }: Pick<Finding, 'verdict' | 'harm'>): boolean {
	return verdict === 'fails' || verdict === 'not-evaluated' || (verdict === 'cannot-tell' && serious.includes(harm));
}

/** One line a stage. Without boost the boost stage is ready. */
export function readiness(findings: readonly Finding[], unboosted: boolean): StageReadiness[] {
	return stages.map(stage => {
		const own = findings.filter(finding => finding.stage === stage);
		return {
			stage,
			ready: (stage === 'boost' && unboosted) || !own.some(standsInTheWay),
			fails: own.filter(({ verdict }) => verdict === 'fails').length,
			cannot_tell: own.filter(({ verdict }) => verdict === 'cannot-tell').length,
		};
	});
}

/** Whether a stage and every one before it are ready: what `--gate` asks. */
export function gateOpen(readied: readonly StageReadiness[], gate: Stage): boolean {
	return readied.slice(0, stages.indexOf(gate) + 1).every(({ ready }) => ready);
}
