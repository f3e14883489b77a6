import type { Outcome } from '../expressions/tree.ts';
import type { Judge, Verdict } from '../rulebook/judge.ts';
import type { Finding } from './audit.ts';
import type { Wording } from './words.ts';

/** A verdict as a finding: words filled in, numbers beside them. */
export function findingOf(verdict: Verdict, judge: Judge, wording: Wording, sure: number | null): Finding {
	const { rule, subject } = verdict;
	const read = (name: string): Outcome =>
		Object.hasOwn(verdict.numbers, name) ? verdict.numbers[name] : verdict.read(name);
	const fill = (text: string) => wording.fill(text, read, rule);
	return {
		rule: rule.id,
		subject,
		section: rule.section,
		stage: rule.stage,
		harm: rule.harm,
		verdict: verdict.verdict,
		sure: verdict.verdict === 'fails' || verdict.verdict === 'holds' ? sure : null,
		title: fill(rule.title) || rule.title,
		why: verdict.broke ? `Not worked out: ${verdict.broke}.` : fill(rule.why),
		do: rule.do.map(fill).filter(step => step !== ''),
		prove: fill(rule.prove),
		parts: rule.parts,
		numbers: Object.fromEntries(Object.entries(verdict.numbers).map(([name, value]) => [name, value ?? null])),
		missing: verdict.missing,
		assumed: verdict.assumed,
		cautions: rule.cautions,
		source: rule.source.map(id => judge.rulebook.sources[id] ?? id).join('; '),
		distance: verdict.distance,
	};
}
