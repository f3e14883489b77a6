import { bind } from '../expressions/bind.ts';
import type { Outcome } from '../expressions/tree.ts';
import type { Part } from '../plugs/checks/part.ts';
import type { Plugs } from '../plugs/parts.ts';
import { namesRead } from './reads.ts';
import type { Rule } from './rulebook.ts';
import type { Verdict } from './verdict.ts';

/** What a rule about plugs may name of the part at hand. */
export const plugNames = ['item', 'right', 'meeting', 'here', 'there', 'reason', 'remedy'] as const;

/** The verdicts of a rule about plugs, one a part; without plugs, or with nothing to judge, it does not apply. */
export function judgeParts(rule: Rule, plugs: Plugs | null): Verdict[] {
	const parts = rule.each?.over === 'plugs' ? (plugs?.parts(rule.each.answer) ?? []) : [];
	if (parts.length === 0) return [verdictOf(rule, null, 'does-not-apply')];
	return parts.map(part => {
		const names: Readonly<Record<string, Outcome>> = { ...part, item: part.name, missing: undefined };
		const holds = bind(rule.holds, name => () => names[name])();
		if (holds === undefined || holds === null) return verdictOf(rule, part, 'cannot-tell', names);
		return verdictOf(rule, part, holds ? 'holds' : 'fails', names);
	});
}

/** What is ticked of circuits that reach the vehicle is a guess where both halves of its plug are given, pin by pin. */
const guess = 'harness.vehicle_circuits';
const guessed = 'plug to the vehicle';

/** Whether the plugs say it better than this rule, which then does not apply. */
export const isSettledBy = (plugs: Plugs | null, rule: Rule): boolean =>
	plugs !== null &&
	rule.topic === guessed &&
	namesRead(rule).has(guess) &&
	plugs.reading.pairs.some(({ left, right }) => left.half === 'engine' && right.half === 'car');

function verdictOf(rule: Rule, part: Part | null, verdict: Verdict['verdict'], names: Verdict['names'] = {}): Verdict {
	return {
		rule,
		subject: part?.name ?? null,
		verdict,
		missing: verdict === 'cannot-tell' ? [...(part?.missing ?? [])].sort() : [],
		assumed: [],
		numbers: {},
		distance: null,
		broke: null,
		names,
		...(verdict === 'fails' && part?.stage && part.harm ? { worse: { stage: part.stage, harm: part.harm } } : {}),
	};
}
