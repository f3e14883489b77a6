import type { Outcome } from '../expressions/tree.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import type { Judge, Verdict } from '../rulebook/judge.ts';
import { type Harm, harms, type Rule, type Stage, stages } from '../rulebook/rulebook.ts';
import type { Wording } from '../wording/template.ts';
import type { Finding } from './audit.ts';
import { onlyKnownFrom } from './stages.ts';

/** Of a finding what decides its stage. */
export type Standing = Pick<
	Finding,
	'rule' | 'stage' | 'harm' | 'verdict' | 'unproved' | 'prove_during' | 'not_wanted'
>;

/** A verdict as far as stages need it: no words, no numbers. */
export function standingOf(
	verdict: Verdict,
	state: Pick<State, 'graph' | 'values'>,
	judge: Judge,
	unproved = false,
	unwanted: ReadonlySet<string> = new Set(),
): Standing {
	const { rule, missing } = verdict;
	const stage = stageOf(rule, state);
	return {
		rule: rule.id,
		stage: worstStage(verdict, stage),
		harm: worstHarm(verdict),
		verdict: verdict.verdict,
		unproved,
		prove_during: isProvedDuring(verdict, stage, judge),
		not_wanted: missing.some(answer => unwanted.has(answer)),
	};
}

/** Whether a verdict may come to stand in the list: what holds and is proved, or does not apply, is only counted. */
export const mayBeListed = ({ verdict }: Verdict, unproved: boolean): boolean =>
	unproved || (verdict !== 'holds' && verdict !== 'does-not-apply');

/** A verdict as a finding: words filled in, with its numbers. Without `wording` it has none but the rule's title. */
export function findingOf(
	verdict: Verdict,
	state: State,
	judge: Judge,
	wording: Wording | null,
	sure: number | null,
	unproved = false,
	unwanted: ReadonlySet<string> = new Set(),
	failing: ReadonlySet<string> = new Set(),
): Finding {
	const { rule, subject, names } = verdict;
	const { graph, values } = state;
	const read = (name: string): Outcome => {
		if (Object.hasOwn(verdict.numbers, name)) return verdict.numbers[name];
		if (!names) return undefined;
		if (Object.hasOwn(names, name)) return names[name];
		const slot = graph.slotOf.get(name);
		return slot === undefined ? names[name] : values[slot];
	};
	const words = wording ? wording.ofRule(rule, read) : wordless;
	const credits = judge.creditsOf(rule);
	const standing = standingOf(verdict, state, judge, unproved, unwanted);
	// Written out: an object begun with another one's fields is made a hundred times as slowly, and there are hundreds.
	return {
		rule: standing.rule,
		stage: standing.stage,
		harm: standing.harm,
		verdict: standing.verdict,
		unproved: standing.unproved,
		prove_during: standing.prove_during,
		not_wanted: standing.not_wanted,
		subject,
		section: rule.section,
		covered_by: verdict.verdict === 'fails' && failing.has(rule.covered_by) ? rule.covered_by : null,
		sure: verdict.verdict === 'fails' || verdict.verdict === 'holds' ? sure : null,
		title: words.title || rule.title,
		why: verdict.broke ? `Not worked out: ${verdict.broke}.` : words.why,
		do: words.do.includes('') ? words.do.filter(step => step !== '') : words.do,
		prove: words.prove,
		parts: credits.parts,
		numbers: nullForUnknown(verdict.numbers),
		missing: verdict.missing,
		assumed: verdict.assumed,
		cautions: rule.cautions,
		source: credits.source,
		distance: verdict.distance,
	};
}

const wordless = { title: '', why: '', do: [], prove: '' };

/** Whether all that it waits for shows only at its stage or later; also what a log did not show and no answer would. */
const isProvedDuring = ({ rule, verdict, missing }: Verdict, stage: Stage, judge: Judge): boolean =>
	missing.length === 0
		? rule.section === 'log' && verdict === 'cannot-tell'
		: onlyKnownFrom(stage, missing.map(judge.knownFrom));

/** The stage of a rule. Without boost a pull belongs to driving: what a log shows of it holds that up. */
const stageOf = ({ section, stage }: Rule, { graph, values }: Pick<State, 'graph' | 'values'>): Stage =>
	section === 'log' && stage === 'boost' && values[slotNamed(graph, 'boost.kind')] === 'none' ? 'move' : stage;

/** The stage of a finding: its rule's own, or that of its subject where it comes before. */
function worstStage({ worse }: Verdict, own: Stage): Stage {
	const stage = worse?.stage as Stage | undefined;
	return stage && stages.indexOf(stage) < stages.indexOf(own) ? stage : own;
}

/** The harm of a finding: its rule's own, or that of its subject where it is worse. */
function worstHarm({ rule, worse }: Verdict): Harm {
	const harm = worse?.harm as Harm | undefined;
	return harm && harms.indexOf(harm) < harms.indexOf(rule.harm) ? harm : rule.harm;
}

/** JSON has no other word for it. Mostly all are known: then they are taken as they are. */
function nullForUnknown(numbers: Verdict['numbers']): Readonly<Record<string, unknown>> {
	let known = true;
	for (const name in numbers) if (numbers[name] === undefined) known = false;
	if (known) return numbers;
	const values: Record<string, unknown> = {};
	for (const name in numbers) values[name] = numbers[name] ?? null;
	return values;
}
