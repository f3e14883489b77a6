import { type Bound, bind, type Reader } from '../expressions/bind.ts';
import { emptyNotes, type Trace, type Traced, traced } from '../expressions/trace.ts';
import type { Expression, Outcome } from '../expressions/tree.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { union } from '../graph/trace.ts';
import { type Comparisons, comparisonsIn, distanceIn } from './distance.ts';
import type { Rule, VerdictWord } from './rulebook.ts';
import type { Subject } from './subjects.ts';

/** What a rule came to for one subject (null: the build as a whole). */
export interface Verdict {
	readonly rule: Rule;
	readonly subject: string | null;
	readonly verdict: VerdictWord;
	/** Answers that would decide it; only when it cannot be decided. */
	readonly missing: readonly string[];
	/** Usual values that went into it. */
	readonly assumed: readonly string[];
	/** Each name read, its value now. */
	readonly numbers: Readonly<Record<string, Outcome>>;
	/** How far past its threshold, as a share of it; null without a figure. */
	readonly distance: number | null;
	/** Why it was not evaluated. */
	readonly broke: string | null;
	/** Names of the part at hand that the rule's words may use; null where judging it threw. */
	readonly names: Subject['names'] | null;
	/** Stage and harm of this subject, where they are worse than the rule's own. */
	readonly worse?: { readonly stage: string; readonly harm: string };
}

/**
 * A rule ready to be evaluated again and again: its expressions with the thresholds put in. They are bound to the values when
 * first needed: most rules are judged once and in no draw, and half of them do not apply.
 */
export interface Ready {
	readonly rule: Rule;
	readonly applies: Expression | null;
	readonly holds: Expression;
	tests: Tests | null;
	traces: Traces | null;
}

interface Tests {
	readonly applies: Bound;
	readonly holds: Bound;
}

/** The verdict on the values and the subject at hand, in one word. */
export function wordOf(ready: Ready, subject: Subject | null, reader: Reader): VerdictWord {
	const { applies, holds } = (ready.tests ??= testsFor(ready, reader));
	return wordFrom(ready.rule, subject, applies, holds);
}

const testsFor = ({ applies, holds }: Ready, reader: Reader): Tests => ({
	applies: applies ? bind(applies, reader) : () => true,
	holds: bind(holds, reader),
});

function wordFrom(rule: Rule, subject: Subject | null, applies: Bound, holds: Bound): VerdictWord {
	if (subject?.unknown) return subject.unknown;
	// Without a pull a rule on each pull may still be known not to apply; other rules speak of the part in what they ask.
	if (rule.each && !subject && rule.each.over !== 'pulls') return 'cannot-tell';
	const applicable = applies();
	if (applicable === false || applicable === null) return 'does-not-apply';
	if (rule.each && !subject) return 'cannot-tell';
	const outcome = holds();
	if (outcome === null) return 'does-not-apply';
	if (applicable === undefined || outcome === undefined) return 'cannot-tell';
	return outcome ? 'holds' : 'fails';
}

/** The verdict with everything it rests on. A rule that throws is not evaluated; the rest stands. */
export function judgeSubject(ready: Ready, subject: Subject | null, state: State, reader: Reader): Verdict {
	try {
		return tracedVerdict(ready, subject, state, reader);
	} catch (error) {
		return notEvaluated(ready.rule, subject, error);
	}
}

/** A verdict that was not come to, and why. */
export const notEvaluated = (rule: Rule, subject: Subject | null, error: unknown): Verdict => ({
	rule,
	subject: subject?.name ?? null,
	verdict: 'not-evaluated',
	missing: [],
	assumed: [],
	numbers: {},
	distance: null,
	broke: (error as Error).message,
	names: null,
});

function tracedVerdict(ready: Ready, subject: Subject | null, state: State, reader: Reader): Verdict {
	const { rule } = ready;
	const { graph, values } = state;
	const traces = (ready.traces ??= tracesFor(ready, reader));
	const { read, blocking, applicable, outcome } = tracedBy(ready, traces, reader);
	const word = wordFrom(
		rule,
		subject,
		() => applicable,
		() => outcome,
	);
	// A list that is not known, or a part of it that has no reading.
	const list = rule.each && (!subject || subject.unknown) ? slotNamed(graph, rule.each.answer) : null;
	const waitsFor = word === 'cannot-tell' ? slotsOf(blocking, state) : [];
	const broke = word === 'cannot-tell' && list === null ? whatBroke(state, waitsFor, blocking) : null;
	const verdict = broke === null ? word : 'not-evaluated';
	const lacking = verdict !== 'cannot-tell' ? [] : list === null ? waitsFor : [...waitsFor, list];
	const numbers: Record<string, Outcome> = {};
	const assumed: (readonly string[])[] = [];
	for (const name of read) {
		const slot = graph.slotOf.get(name);
		if (slot !== undefined && state.assumed[slot]!.length > 0) assumed.push(state.assumed[slot]!);
		const ofSubject = subject !== null && (slot === undefined || Object.hasOwn(subject.names, name));
		numbers[name] = ofSubject ? subject.names[name] : slot === undefined ? undefined : values[slot];
	}
	// Names as the rule writes them: its thresholds by their own names.
	for (const [name, now] of traces.thresholds) numbers[name] = now();
	return {
		rule,
		subject: subject?.name ?? null,
		verdict,
		missing: lacking.length === 0 ? none : missingFor(lacking, state),
		assumed: union(assumed),
		numbers,
		distance: verdict === 'fails' ? distanceIn((traces.comparisons ??= comparisonsIn(ready.holds, reader))) : null,
		broke,
		names: subject?.names ?? {},
	};
}

const none: readonly string[] = [];

const slotsOf = (names: readonly string[], { graph }: State): number[] =>
	names.flatMap(name => graph.slotOf.get(name) ?? []);

/** The answers that some slots wait for. Only answers can be given; what a log lacks is said by the rule itself. */
const missingFor = (lacking: readonly number[], { graph, missing }: State): readonly string[] =>
	union(
		lacking
			.map(slot => (missing[slot]!.length > 0 ? missing[slot]! : [graph.nodes[slot]!.id]))
			.map(ids => ids.filter(id => !id.startsWith('log.'))),
	);

/** What the trace of a rule needs beyond its verdict, bound once; what holds and its comparisons when first looked at. */
interface Traces {
	readonly applies: Traced | null;
	holds: Traced | null;
	readonly thresholds: readonly (readonly [string, Bound])[];
	comparisons: Comparisons | null;
}

function tracesFor({ rule, applies }: Ready, reader: Reader): Traces {
	return {
		applies: applies && traced(applies, reader),
		holds: null,
		thresholds: Object.entries(rule.thresholds).map(([name, { value }]) => [name, bind(value, reader)] as const),
		comparisons: null,
	};
}

/** Both outcomes, and what they read and wait for. What holds is not looked at where the rule is known not to apply. */
interface TracedRule extends Trace {
	readonly applicable: Outcome;
	readonly outcome: Outcome;
}

function tracedBy({ holds }: Ready, traces: Traces, reader: Reader): TracedRule {
	const notes = emptyNotes();
	const applicable = traces.applies ? traces.applies(notes) : true;
	const idle = applicable === false || applicable === null;
	const outcome = idle ? undefined : (traces.holds ??= traced(holds, reader))(notes);
	return { read: notes.read, blocking: notes.blocking, applicable, outcome };
}

function whatBroke({ graph, broken }: State, waitsFor: readonly number[], blocking: readonly string[]): string | null {
	const slot = waitsFor.find(other => broken.has(other));
	if (slot !== undefined) return `${graph.nodes[slot]!.id}: ${broken.get(slot)}`;
	return blocking.length === 0 ? 'a figure in it is too large' : null;
}
