import type { Assessment } from '../../audit/assess.ts';
import type { Finding, StageReadiness } from '../../audit/audit.ts';
import { courseOf, isListed, shownAt, standsInTheWay } from '../../audit/stages.ts';
import { type Stage, stages } from '../../sheet/stage.ts';
import { count, lower, stageBy } from './names.ts';

type Judged = Pick<Assessment, 'audit' | 'state' | 'model'>;

/** A line a stage: ready, or what holds it up. The engine in, the stage before that is past and left out. */
export function readinessWords(assessment: Judged): { stage: Stage; ready: boolean; words: string }[] {
	const { engineIn } = courseOf(assessment.state);
	return assessment.audit.stages
		.filter(({ stage }) => !(stage === 'install' && engineIn))
		.map(row => ({ stage: row.stage, ready: row.ready, words: wordsOf(row, assessment) }));
}

function wordsOf(row: StageReadiness, assessment: Judged): string {
	const { stage, ready, waits_for, prove_during } = row;
	const own = findingsAt(assessment, [stage]);
	const way = ready ? [] : own.filter(standsInTheWay);
	const during = prove_during > 0 ? `${count(prove_during, 'line')} to be proved during it` : '';
	if (ready) {
		const usual = usualBehind(assessment, stages.slice(0, stages.indexOf(stage) + 1));
		const small = own.filter(isListed).length;
		return joined([
			`ready, as far as the answers go${usual.all > 0 ? `, on ${count(usual.all, 'usual value')}` : ''}${usual.packs > 0 ? `, ${usual.packs} of them from rule packs` : ''}`,
			small > 0 ? `${count(small, 'line')} open that ${small === 1 ? 'holds' : 'hold'} nothing up` : '',
			during,
		]);
	}
	const [first] = waits_for;
	const waits = first ? `waits for: ${lower(stageBy(first, assessment))}` : '';
	return joined([openWords(way) || 'nothing of its own open', waits, during]);
}

const joined = (parts: readonly string[]): string => parts.filter(Boolean).join('; ');

/** What stands in the way, counted: to do, not known, not proved. */
function openWords(way: readonly Finding[]): string {
	const { mend, find, prove } = counted(way);
	return [
		mend > 0 ? `${mend} to do` : '',
		find > 0 ? `${find} not known yet` : '',
		prove > 0 ? `${prove} not proved` : '',
	]
		.filter(Boolean)
		.join(', ');
}

function counted(way: readonly Finding[]): { mend: number; find: number; prove: number } {
	const mend = way.filter(({ verdict }) => verdict === 'fails').length;
	const prove = way.filter(({ unproved }) => unproved).length;
	return { mend, find: way.length - mend - prove, prove };
}

/** The findings shown at some stages. */
function findingsAt({ audit, state }: Judged, at: readonly Stage[]): Finding[] {
	const course = courseOf(state);
	return audit.findings.filter(({ stage }) => at.includes(shownAt(stage, course)));
}

/** How many usual values the lines that hold at some stages rest on. */
function usualBehind(assessment: Judged, at: readonly Stage[]): { all: number; packs: number } {
	const held = findingsAt(assessment, at).filter(({ verdict }) => verdict === 'holds');
	const { judge } = assessment.model;
	const names = [...new Set(held.flatMap(({ assumed }) => assumed))].map(name => judge.usualBehind(name));
	return { all: names.filter(from => from !== 'quantity').length, packs: names.filter(from => from === 'pack').length };
}

/** Why a gate is shut, in one line: "not ready to move: 12 to do, 4 to find out, first: ...". */
export function whyShut(assessment: Judged, gate: Stage): string {
	const { unboosted } = courseOf(assessment.state);
	const until = stages.slice(0, stages.indexOf(gate) + 1).filter(stage => !(stage === 'boost' && unboosted));
	const way = findingsAt(assessment, until).filter(standsInTheWay);
	const { mend, find, prove } = counted(way);
	const parts = [
		mend > 0 ? `${mend} to do` : '',
		find > 0 ? `${find} to find out` : '',
		prove > 0 ? `${prove} to prove` : '',
		`first: ${lower(way[0]!.title)}`,
	];
	return `not ready ${gateWords[gate]}: ${parts.filter(Boolean).join(', ')}`;
}

const gateWords: Readonly<Record<Stage, string>> = {
	install: 'to go in',
	crank: 'to crank',
	fire: 'to fire',
	move: 'to move',
	boost: 'to make boost',
	tidy: 'all round',
};
