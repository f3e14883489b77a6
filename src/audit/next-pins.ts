import type { MeetingWord } from '../plugs/circuit.ts';
import { ofSorts } from '../plugs/meet.ts';
import type { Plugs } from '../plugs/parts.ts';
import type { Reading } from '../plugs/reading.ts';
import type { Row } from '../plugs/rows.ts';
import type { Verdict } from '../rulebook/judge.ts';
import type { Rule } from '../rulebook/rulebook.ts';
import { sorts } from '../sheet/plugs.ts';

/** How a pin stands among the answers of `next`: it has no question of its own. */
export const pinAnswer = (subject: string): string => `plugs: ${subject}`;

/** A pin, or a plug, that something waits for, with the rules that its reading may turn, and why in words. */
export interface WaitingPin {
	readonly answer: string;
	readonly flips: readonly Rule[];
	readonly why: string;
}

/** What each rule about meetings fails on. */
const failsOn: Readonly<Record<string, MeetingWord>> = {
	'pins.meet-and-burn': 'burns',
	'pins.meet-and-kill': 'kills',
	'pins.meet-and-mislead': 'wrong',
};

/**
 * The pins that something waits for. Of what could meet there only what may turn out so counts: a wire nobody traced
 * that faces a live feed may burn, one that faces an empty cavity may not.
 */
export function waitingPins(verdicts: readonly Verdict[], plugs: Plugs | null): WaitingPin[] {
	const waiting = new Map<string, Rule[]>();
	for (const { rule, verdict, subject, missing } of verdicts) {
		// What waits for an answer is named by that answer; a circuit that nobody has seen is at no pin yet.
		if (rule.each?.over !== 'plugs' || verdict !== 'cannot-tell' || subject === null || missing.length > 0) continue;
		if (rule.each.answer === 'plugs.unseen') continue;
		waiting.set(subject, [...(waiting.get(subject) ?? []), rule]);
	}
	return [...waiting].flatMap(([subject, rules]) => {
		const may = plugs && mayBe(subject, plugs.reading);
		const flips = may ? rules.filter(({ id }) => !Object.hasOwn(failsOn, id) || may.has(failsOn[id]!)) : rules;
		return flips.length > 0 ? [{ answer: pinAnswer(subject), flips, why: whyOf(subject, flips.length, may) }] : [];
	});
}

/** What may happen at a pin of which one side is not known; null where the subject is no such pin. */
function mayBe(subject: string, { pairs, vocabulary }: Reading): ReadonlySet<MeetingWord> | null {
	const found: Row[] = pairs.flatMap(({ left, rows }) => rows.filter(({ pin }) => `${left.plug} ${pin}` === subject));
	const open = found.filter(({ met }) => met.meeting === 'unknown');
	if (open.length === 0) return null;
	return new Set(
		open.flatMap(({ left, right }) => {
			const known = [left, right].flatMap(pin => (pin && pin.sort !== 'unknown' ? [pin.sort] : []));
			const others = sorts.filter(sort => sort !== 'unknown');
			return (known.length > 0 ? known : others).flatMap(sort =>
				others.map(other => ofSorts(sort, other, vocabulary).meeting),
			);
		}),
	);
}

function whyOf(subject: string, count: number, may: ReadonlySet<MeetingWord> | null): string {
	const lines = count === 1 ? '1 line' : `${count} lines`;
	const worst = may?.has('burns')
		? '; it may be a dead short'
		: may?.has('kills')
			? '; it may kill the controller'
			: '';
	return `what is at ${subject} decides ${lines}${worst}`;
}
