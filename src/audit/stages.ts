import { type State, valueIn } from '../graph/solve.ts';
import { isFrom, type Stage, stages } from '../sheet/stage.ts';
import type { Finding, StageReadiness } from './audit.ts';

/** Harms that hold a stage up. What only wears or annoys is listed, and holds nothing up. */
export const isSerious = ({ harm }: Pick<Finding, 'harm'>): boolean =>
	harm === 'person' || harm === 'engine' || harm === 'strands';

type Open = Pick<Finding, 'verdict' | 'harm' | 'unproved' | 'prove_during' | 'not_wanted'>;
type Listed = Open & Pick<Finding, 'covered_by'>;

/** Whether a finding keeps its stage from being ready: failed, not known, not worked out or not proved. */
export function standsInTheWay(finding: Open): boolean {
	if (!isSerious(finding)) return false;
	const { verdict, unproved } = finding;
	return verdict === 'fails' || verdict === 'not-evaluated' || isUndecided(finding) || unproved;
}

/** Cannot be judged, for want of an answer that this build can have by now. */
const isUndecided = ({
	verdict,
	prove_during,
	not_wanted,
}: Pick<Open, 'verdict' | 'prove_during' | 'not_wanted'>): boolean =>
	verdict === 'cannot-tell' && !prove_during && !not_wanted;

/** Whether a finding is in the list: whatever fails or broke and no other line says as well, and whatever else stands in the way. */
export const isListed = (finding: Listed): boolean =>
	finding.covered_by === null &&
	(finding.verdict === 'fails' || finding.verdict === 'not-evaluated' || standsInTheWay(finding));

/** What decides how stages follow each other in this car. */
export interface Course {
	/** Whether the engine is in the car; not known counts as not in. Before it goes in is then past. */
	readonly engineIn: boolean;
	readonly unboosted: boolean;
}

/** The course of a solved sheet. */
export function courseOf(state: State): Course {
	const stage = valueIn(state, 'build.stage');
	return {
		engineIn: typeof stage === 'string' && stage !== 'on-stand',
		unboosted: valueIn(state, 'boost.kind') === 'none',
	};
}

/** The stage under which a finding is shown and counted: with the engine in, what belonged before that comes before it cranks. */
export const shownAt = (stage: Stage, { engineIn }: Pick<Course, 'engineIn'>): Stage =>
	stage === 'install' && engineIn ? 'crank' : stage;

/**
 * One line a stage. Readiness adds up: a stage is ready only when every one before it is. Without boost nothing of the boost
 * stage holds anything up.
 */
export function readiness(findings: readonly (Open & Pick<Finding, 'stage'>)[], course: Course): StageReadiness[] {
	const held: Stage[] = [];
	return stages.map(stage => {
		const own = findings.filter(finding => shownAt(finding.stage, course) === stage);
		const count = (counts: (finding: Open) => boolean) => own.filter(counts).length;
		const waits_for = [...held];
		const passed = stage === 'boost' && course.unboosted;
		if (!passed && own.some(standsInTheWay)) held.push(stage);
		return {
			stage,
			ready: held.length === 0,
			fails: count(({ verdict }) => verdict === 'fails'),
			cannot_tell: count(isUndecided),
			unproved: count(({ unproved }) => unproved),
			prove_during: count(({ prove_during, not_wanted }) => prove_during && !not_wanted),
			waits_for,
		};
	});
}

/** Whether a stage is ready, which takes in every one before it: what `--gate` asks. */
export const gateOpen = (rows: readonly StageReadiness[], gate: Stage): boolean =>
	rows.some(({ stage, ready }) => stage === gate && ready);

/** Whether what a verdict waits for can only be known at its stage or later. */
export const onlyKnownFrom = (stage: Stage, froms: readonly (Stage | null)[]): boolean =>
	froms.length > 0 && froms.every(from => from !== null && isFrom(from, stage));
