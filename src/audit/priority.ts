import { harms, type Stage, stages } from '../rulebook/rulebook.ts';
import type { Finding } from './audit.ts';

/**
 * The order of the list, most urgent first. Stage: what keeps the engine from its next step is done first. Harm: a person
 * before the engine, and both before what only annoys. How sure: what surely fails is worth the work. How far past the threshold.
 * Then the rule's id and its subject, so that no two findings are ever equal. `shown` is the stage under which a stage's lines
 * stand.
 */
export function byPriority(a: Finding, b: Finding, shown = (stage: Stage): Stage => stage): number {
	return (
		stages.indexOf(shown(a.stage)) - stages.indexOf(shown(b.stage)) ||
		harms.indexOf(a.harm) - harms.indexOf(b.harm) ||
		(b.sure ?? 1) - (a.sure ?? 1) ||
		(b.distance ?? 0) - (a.distance ?? 0) ||
		byId(a, b)
	);
}

/** By rule, then by subject, in an order that no locale changes. */
export function byId(a: Finding, b: Finding): number {
	return compare(a.rule, b.rule) || compare(a.subject ?? '', b.subject ?? '');
}

function compare(a: string, b: string): number {
	return a === b ? 0 : a < b ? -1 : 1;
}

/** Fails by priority, then what cannot be judged by priority, then the rest by id. */
export function inOrder(findings: readonly Finding[], shown?: (stage: Stage) => Stage): Finding[] {
	const first = (a: Finding, b: Finding) => byPriority(a, b, shown);
	const fails: Finding[] = [];
	const undecided: Finding[] = [];
	const rest: Finding[] = [];
	for (const finding of findings) {
		if (finding.verdict === 'fails') fails.push(finding);
		else if (finding.verdict === 'cannot-tell') undecided.push(finding);
		else rest.push(finding);
	}
	return [...fails.sort(first), ...undecided.sort(first), ...rest.sort(byId)];
}
