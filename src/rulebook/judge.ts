import { type Bound, bind, type Reader } from '../expressions/bind.ts';
import { trace } from '../expressions/blocking.ts';
import { type Expression, namesIn, type Outcome, operands, substitute } from '../expressions/tree.ts';
import type { State } from '../quantities/pass.ts';
import { union } from '../quantities/pass.ts';
import { slotNamed } from '../quantities/replace.ts';
import type { Question } from '../sheet/question.ts';
import type { Rule, Rulebook, VerdictWord } from './rulebook.ts';
import { type Subject, subjectsOf } from './subjects.ts';

/** What a rule came to for one subject (null: the build as a whole). */
export interface Verdict {
	readonly rule: Rule;
	readonly subject: string | null;
	readonly verdict: VerdictWord;
	/** Answers that would decide it; only when it cannot be told. */
	readonly missing: readonly string[];
	/** Usual values that went into it. */
	readonly assumed: readonly string[];
	/** Each name read, its value now. */
	readonly numbers: Readonly<Record<string, Outcome>>;
	/** How far past its threshold, as a share of it; null without a figure. */
	readonly distance: number | null;
	/** Why it was not evaluated. */
	readonly broke: string | null;
	/** Any other name that the rule's words may use, as it was when it was judged. */
	read(name: string): Outcome;
}

/** A rule ready to be evaluated again and again on whatever values the judge looks at. */
interface Ready {
	readonly rule: Rule;
	readonly applies: Bound | null;
	readonly holds: Bound;
	readonly appliesTree: Expression | null;
	readonly holdsTree: Expression;
}

/** Judges a rulebook on a graph's values: once in full, or verdict words alone for each draw. */
export class Judge {
	readonly rulebook: Rulebook;
	private readonly ready: readonly Ready[];
	private readonly questions: ReadonlyMap<string, Question>;
	private readonly slotOf: ReadonlyMap<string, number>;
	private values: readonly Outcome[] = [];
	private subject: Subject | null = null;

	constructor(rulebook: Rulebook, slotOf: ReadonlyMap<string, number>) {
		this.rulebook = rulebook;
		this.slotOf = slotOf;
		this.questions = new Map(rulebook.questions.map(question => [question.id, question]));
		this.ready = rulebook.rules.map(rule => this.prepare(rule));
	}

	private readonly reader: Reader = name => {
		const slot = this.slotOf.get(name);
		if (slot !== undefined) return () => this.values[slot];
		return () => this.subject?.names[name];
	};

	private prepare(rule: Rule): Ready {
		const thresholds = new Map(Object.entries(rule.thresholds).map(([name, { value }]) => [name, value]));
		const holdsTree = substitute(rule.holds, thresholds);
		const appliesTree = rule.applies && substitute(rule.applies, thresholds);
		return {
			rule,
			appliesTree,
			holdsTree,
			applies: appliesTree && bind(appliesTree, this.reader),
			holds: bind(holdsTree, this.reader),
		};
	}

	/** Every verdict with what it rests on, in the order of the rulebook. */
	judge(state: State): Verdict[] {
		this.values = state.values;
		return this.ready.flatMap(ready => {
			const subjects = subjectsOf(
				ready.rule,
				this.questions,
				state.values,
				id => slotNamed(state.graph, id),
				this.rulebook.codes,
			);
			if (subjects === null) return [this.tell(ready, null, state)];
			return subjects.map(subject => this.tell(ready, subject, state));
		});
	}

	/** Which rules, by their place in the rulebook, read one of these slots. */
	touchedBy(slots: ReadonlySet<number>): number[] {
		return this.ready.flatMap(({ rule, appliesTree, holdsTree }, place) => {
			const names = namesIn(holdsTree, appliesTree ? namesIn(appliesTree) : new Set());
			if (rule.each) names.add(rule.each.answer);
			return [...names].some(name => slots.has(this.slotOf.get(name) ?? -1)) ? [place] : [];
		});
	}

	/** The verdict words alone of one rule on other values (a draw): one a subject, in the order of `judge`. */
	wordsOf(place: number, values: readonly Outcome[]): VerdictWord[] {
		this.values = values;
		const ready = this.ready[place]!;
		const subjects = subjectsOf(ready.rule, this.questions, values, id => this.slotOf.get(id)!, this.rulebook.codes);
		return (subjects ?? [null]).map(subject => {
			this.subject = subject;
			return this.word(ready);
		});
	}

	private word({ rule, applies, holds }: Ready): VerdictWord {
		if (this.subject?.unknown) return this.subject.unknown;
		if (rule.each && !this.subject) return 'cannot-tell';
		const applicable = applies ? applies() : true;
		if (applicable === false || applicable === null) return 'does-not-apply';
		const outcome = holds();
		if (applicable === undefined) return outcome === null ? 'does-not-apply' : 'cannot-tell';
		if (outcome === undefined) return 'cannot-tell';
		return outcome === null ? 'does-not-apply' : outcome ? 'holds' : 'fails';
	}

	private tell(ready: Ready, subject: Subject | null, state: State): Verdict {
		this.subject = subject;
		const { rule, appliesTree, holdsTree } = ready;
		let verdict = this.word(ready);
		const traced = trace(holdsTree, this.reader);
		if (appliesTree) trace(appliesTree, this.reader, traced);
		const slots = [...traced.read].flatMap(name => this.slotOf.get(name) ?? []);
		const blocking = [...traced.blocking].flatMap(name => this.slotOf.get(name) ?? []);
		const broken = blocking.find(slot => state.broken.has(slot));
		if (verdict === 'cannot-tell' && broken !== undefined) verdict = 'not-evaluated';
		const listSlot = rule.each ? slotNamed(state.graph, rule.each.answer) : null;
		const lacking =
			verdict === 'cannot-tell'
				? [...blocking, ...(listSlot !== null && (!subject || subject.unknown) ? [listSlot] : [])]
				: [];
		const missing = lacking.map(slot =>
			state.missing[slot]!.length > 0 ? state.missing[slot]! : [state.graph.nodes[slot]!.id],
		);
		return {
			rule,
			subject: subject?.name ?? null,
			verdict,
			missing: union(missing),
			assumed: union(slots.map(slot => state.assumed[slot]!)),
			numbers: this.numbersOf(ready, traced.read),
			distance: verdict === 'fails' ? distanceOf(holdsTree, this.reader) : null,
			read: name => {
				const slot = this.slotOf.get(name);
				return slot === undefined ? subject?.names[name] : state.values[slot];
			},
			broke: broken === undefined ? null : `${state.graph.nodes[broken]!.id}: ${state.broken.get(broken)}`,
		};
	}

	/** Names as the rule writes them: its thresholds by their own names. */
	private numbersOf({ rule }: Ready, read: ReadonlySet<string>): Record<string, Outcome> {
		const numbers: Record<string, Outcome> = {};
		for (const name of read) numbers[name] = this.reader(name)();
		for (const [name, { value }] of Object.entries(rule.thresholds)) numbers[name] = bind(value, this.reader)();
		return numbers;
	}
}

/** |value - threshold| / |threshold| of the first comparison that has one. */
function distanceOf(tree: Expression, reader: Reader): number | null {
	const open: Expression[] = [tree];
	for (let node = open.shift(); node; node = open.shift()) {
		if (['<', '<=', '>', '>=', '==', '!='].includes(node[0])) {
			const [left, right] = operands(node).map(side => bind(side, reader)());
			if (typeof left === 'number' && typeof right === 'number' && right !== 0) return Math.abs((left - right) / right);
		}
		open.unshift(...operands(node));
	}
	return null;
}
