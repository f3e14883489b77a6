import type { Reader } from '../expressions/bind.ts';
import { type Expression, type Outcome, substitute } from '../expressions/tree.ts';
import { slotNamed } from '../graph/graph.ts';
import type { State } from '../graph/solve.ts';
import { perPull } from '../log/quantities.ts';
import type { Plugs } from '../plugs/parts.ts';
import type { Question } from '../sheet/question.ts';
import { isSettledBy, judgeParts } from './judge-parts.ts';
import { namesRead } from './reads.ts';
import type { Rule, Rulebook, Stage, VerdictWord } from './rulebook.ts';
import { type Subject, subjectsOf } from './subjects.ts';
import { judgeSubject, notEvaluated, type Ready, type Verdict, wordOf } from './verdict.ts';

export type { Verdict };

/** Where a rule is from, and the parts that its work takes. */
interface Credits {
	readonly source: string;
	readonly parts: readonly string[];
}

/** Judges a rulebook on a graph's values: once in full, or verdict words alone for each draw. */
export class Judge {
	readonly rulebook: Rulebook;
	private readonly ready: readonly Ready[];
	readonly questions: ReadonlyMap<string, Question>;
	readonly rules: ReadonlyMap<string, Rule>;
	private readonly slotOf: ReadonlyMap<string, number>;
	/** What the bound expressions look at now: the values, and the part of the build at hand. */
	private values: readonly Outcome[] = [];
	private subject: Subject | null = null;
	/** For each slot the rules that read it; worked out when it is first asked for. */
	private readBy: readonly (readonly number[])[] | null = null;
	private readonly credits = new Map<Rule, Credits>();
	private readonly parts: ReadonlyMap<string, string>;

	constructor(rulebook: Rulebook, slotOf: ReadonlyMap<string, number>) {
		this.rulebook = rulebook;
		this.slotOf = slotOf;
		this.parts = new Map(rulebook.parts.map(({ id, title }) => [id, title]));
		this.questions = new Map(rulebook.questions.map(question => [question.id, question]));
		this.rules = new Map(rulebook.rules.map(rule => [rule.id, rule]));
		this.ready = rulebook.rules.map(rule => this.prepare(rule));
	}

	/** The stage from which an answer can be known at all; null when it can be found out at any time. */
	readonly knownFrom = (answer: string): Stage | null => this.questions.get(answer)?.known_from ?? null;

	/** Where a value named in `assumed` is from: a pack, a question's usual value, or a quantity that no question asks. */
	usualBehind(name: string): 'pack' | 'question' | 'quantity' {
		if (name.endsWith(')')) return 'pack';
		return this.questions.has(name) ? 'question' : 'quantity';
	}

	/** What a rule names of the rulebook, in words. */
	creditsOf(rule: Rule): Credits {
		let credits = this.credits.get(rule);
		if (!credits) {
			credits = {
				source: rule.source.map(id => this.rulebook.sources[id] ?? id).join('; '),
				// What a pack says in words stays.
				parts: rule.parts.map(part => this.parts.get(part) ?? part),
			};
			this.credits.set(rule, credits);
		}
		return credits;
	}

	private readonly reader: Reader = name => {
		const slot = this.slotOf.get(name);
		if (slot !== undefined) return () => this.values[slot];
		return () => this.subject?.names[name];
	};

	/** In a rule on each pull a pull's own figure goes before the list of them. */
	private readonly pullReader: Reader = name =>
		perPull.has(name) ? () => this.subject?.names[name] : this.reader(name);

	private readerOf({ each }: Rule): Reader {
		return each?.over === 'pulls' ? this.pullReader : this.reader;
	}

	private prepare(rule: Rule): Ready {
		const thresholds = new Map(Object.entries(rule.thresholds).map(([name, { value }]) => [name, value]));
		const whole = (tree: Expression) => substitute(tree, thresholds);
		return { rule, applies: rule.applies && whole(rule.applies), holds: whole(rule.holds), tests: null, traces: null };
	}

	/** Every verdict with what it rests on, in the order of the rulebook; with `wanted` those of some rules alone. */
	judge(state: State, plugs: Plugs | null = null, wanted?: (rule: Rule) => boolean): Verdict[] {
		// A loop: flatMap makes its list by a slow way of the engine, which shows in a stream of sheets.
		const verdicts: Verdict[] = [];
		for (let place = 0; place < this.ready.length; place++) {
			if (wanted && !wanted(this.ready[place]!.rule)) continue;
			for (const verdict of this.judgeAt(place, state, plugs)) verdicts.push(verdict);
		}
		return verdicts;
	}

	/** The verdicts of the rule at one place in the rulebook. */
	judgeAt(place: number, state: State, plugs: Plugs | null = null): Verdict[] {
		this.values = state.values;
		const ready = this.ready[place]!;
		const { rule } = ready;
		if (rule.each?.over === 'plugs' || isSettledBy(plugs, rule)) return judgeParts(rule, plugs);
		return this.judgeRule(ready, state);
	}

	/** A verdict a subject of one rule. */
	private judgeRule(ready: Ready, state: State): Verdict[] {
		if (!ready.rule.each) {
			this.subject = null;
			return [judgeSubject(ready, null, state, this.reader)];
		}
		let subjects: Subject[] | null;
		try {
			const slotOf = (id: string) => slotNamed(state.graph, id);
			subjects = subjectsOf(ready.rule, this.questions, state.values, slotOf, this.rulebook.codes);
		} catch (error) {
			return [notEvaluated(ready.rule, null, error)];
		}
		return (subjects ?? [null]).map(subject => {
			this.subject = subject;
			return judgeSubject(ready, subject, state, this.readerOf(ready.rule));
		});
	}

	/** Which rules, by their place in the rulebook, read one of these slots. */
	placesReadingAny(slots: ReadonlySet<number>): number[] {
		const places = new Set([...slots].flatMap(slot => this.placesReading(slot)));
		return [...places].sort((a, b) => a - b);
	}

	/** Which rules, by their place in the rulebook, read this slot. */
	placesReading(slot: number): readonly number[] {
		this.readBy ??= this.placesBySlot();
		return this.readBy[slot]!;
	}

	private placesBySlot(): number[][] {
		const places = Array.from({ length: this.slotOf.size }, (): number[] => []);
		for (const [place, rule] of this.rulebook.rules.entries()) {
			for (const name of namesRead(rule)) {
				const slot = this.slotOf.get(name);
				if (slot !== undefined) places[slot]!.push(place);
			}
		}
		return places;
	}

	/** The verdict words alone of one rule on other values (a draw): one a subject, in the order of `judge`. */
	wordsOf(place: number, values: readonly Outcome[]): VerdictWord[] {
		this.values = values;
		const ready = this.ready[place]!;
		if (!ready.rule.each) return [this.wordFor(ready, null)];
		try {
			const subjects = subjectsOf(ready.rule, this.questions, values, id => this.slotOf.get(id)!, this.rulebook.codes);
			return (subjects ?? [null]).map(subject => this.wordFor(ready, subject));
		} catch {
			return ['not-evaluated'];
		}
	}

	private wordFor(ready: Ready, subject: Subject | null): VerdictWord {
		this.subject = subject;
		try {
			return wordOf(ready, subject, this.readerOf(ready.rule));
		} catch {
			return 'not-evaluated';
		}
	}
}
