import type { Expression, Value } from '../expressions/tree.ts';
import type { Channel } from '../log/channel.ts';
import type { Declared } from '../log/declared.ts';
import type { Vocabulary } from '../plugs/circuit.ts';
import type { Access } from '../sheet/access.ts';
import type { PlugHalf } from '../sheet/plugs.ts';
import type { Question, UnitSet } from '../sheet/question.ts';
import type { Stage } from '../sheet/stage.ts';
import type { Text } from '../sheet/text.ts';
import type { Kind } from '../units/kinds.ts';
import type { ExpectedReading } from './expected-reading.ts';
import type { Procedure } from './procedure.ts';
import type { TroubleCode } from './trouble-code.ts';
import type { UsualCircuit } from './usual-circuit.ts';

export { type Stage, stages } from '../sheet/stage.ts';

/** What happens if it is not settled, worst first. */
export const harms = ['person', 'engine', 'strands', 'wear', 'annoys'] as const;
export type Harm = (typeof harms)[number];

/** What a rule came to, in one word; `not-evaluated`: a formula behind it broke. */
export type VerdictWord = 'fails' | 'holds' | 'cannot-tell' | 'does-not-apply' | 'not-evaluated';

/** A rule's example: a named build with some answers or quantities set or taken away, and what must come of it. */
export interface Example {
	readonly on: string;
	/** Answers in the sheet's own shape. */
	readonly answers: Readonly<Record<string, unknown>>;
	/** Quantities set outright, in canonical units. */
	readonly quantities: Readonly<Record<string, Value>>;
	readonly without: readonly string[];
	/** Halves of plugs in place of the build's own, of which it has none. */
	readonly plugs?: readonly PlugHalf[];
	readonly item: string | null;
	readonly then: VerdictWord;
	readonly missing: readonly string[] | null;
	readonly at: string;
}

/** A figure of a rule by its name: a constant, or made of other names. */
export interface Threshold {
	readonly value: Expression;
	readonly kind: Kind | 'yes-no' | 'words' | 'list';
	/** The unit a constant was written in, where the kind has no one unit of its own (ratios). */
	readonly unit?: string;
	/** A constant as each unit set writes it, where that is not how it was written in the rule. */
	readonly shown?: Readonly<Partial<Record<UnitSet, string>>>;
}

/** What a rule with `each` makes a finding of, one by one. */
export interface Each {
	readonly answer: string;
	readonly over: 'choices' | 'cylinders' | 'codes' | 'circuits' | 'plugs' | 'pulls';
	readonly subjects: readonly string[] | null;
}

/** A rule as compiled. Numbers are in canonical units. */
export interface Rule {
	readonly id: string;
	readonly section: string;
	readonly topic: string;
	readonly title: string;
	readonly stage: Stage;
	readonly harm: Harm;
	readonly applies: Expression | null;
	readonly thresholds: Readonly<Record<string, Threshold>>;
	readonly holds: Expression;
	readonly each: Each | null;
	readonly why: Text;
	readonly do: readonly Text[];
	readonly prove: Text;
	/** Ids of rules/parts.yaml; of a pack also plain words. */
	readonly parts: readonly string[];
	readonly access: Access;
	/** Hands-on time, min: a usual figure. */
	readonly minutes: number;
	/** Rules, and circuits of plugs, that are settled before this work is begun. */
	readonly needs: readonly string[];
	/** Other work that stands open once this is being done. */
	readonly opens: readonly Access[];
	readonly cautions: readonly string[];
	readonly source: readonly string[];
	readonly examples: readonly Example[];
	/** The boost limits at which it begins to fail. */
	readonly limit: readonly string[];
	/** Why a rule on boost is no boost limit. */
	readonly no_limit: string;
	/** The rule that says the same and more: while that one fails, this one is not listed. Empty: none. */
	readonly covered_by: string;
	/** Whether it fails where two answers cannot both be so: the interview says so at once. It reads answers only. */
	readonly contradiction: boolean;
	/** file:line of the rule, for errors. */
	readonly at: string;
}

/** A file of questions and rules; `place`: its place in the order. */
export interface Topic {
	readonly topic: string;
	readonly section: string;
	readonly place: number;
	readonly questions: readonly string[];
	readonly rules: readonly string[];
}

export interface Section {
	readonly id: string;
	readonly title: string;
	readonly words: string;
	/** Quantities that its answers move, shown beside its questions. */
	readonly figures: readonly string[];
}

/** A caution of rules/cautions.yaml; `when`: where it is printed whatever the lines are. */
export interface Caution {
	readonly id: string;
	readonly title: string;
	/** What to do about it, in one line. */
	readonly brief: string;
	readonly words: Text;
	readonly when: Expression | null;
}

/** A part to get. */
export interface Part {
	readonly id: string;
	readonly title: string;
	/** What several are called, where each line needs its own; null: one serves every line. */
	readonly plural: string | null;
	/** Parts that need not be got beside this one. */
	readonly covers: readonly string[];
}

/** What is looked at again once it drives: at the threshold `due` of a rule, each time a distance is over, or at an occasion. */
export interface Interval {
	readonly name: string;
	/** What to look at, in a line. */
	readonly look: string;
	readonly rule: string | null;
	/** The figure that says how far it is to the next one. */
	readonly every: string | null;
}

export interface LimitWords {
	readonly title: string;
	readonly raise: Text;
}

/** A word of the trade, and the words that are not used for it. */
export interface Term {
	readonly term: string;
	readonly meaning: string;
	readonly not: readonly string[];
	/** Longer terms that hold one of those words, and stay. */
	readonly except: readonly string[];
}

/** Answers of a build that rules' examples start from, in the sheet's shape by question id. */
export type NamedBuild = Readonly<Record<string, unknown>>;

/** Everything that rules/ says, checked and compiled. */
export interface Rulebook {
	readonly sections: readonly Section[];
	readonly topics: readonly Topic[];
	/** In the order of the interview. */
	readonly questions: readonly Question[];
	readonly rules: readonly Rule[];
	readonly cautions: readonly Caution[];
	readonly sources: Readonly<Record<string, string>>;
	readonly limits: Readonly<Record<string, LimitWords>>;
	readonly readings: readonly ExpectedReading[];
	readonly intervals: readonly Interval[];
	/** The rows of the wiring worksheet. */
	readonly worksheet: readonly UsualCircuit[];
	/** The circuits of plugs, and what happens when they meet. */
	readonly vocabulary: Vocabulary;
	readonly parts: readonly Part[];
	readonly procedures: readonly Procedure[];
	readonly codes: Readonly<Record<string, TroubleCode>>;
	/** By what the episodes of a log are known; null in a rulebook that could not be read. */
	readonly episodes: Declared | null;
	/** What a column of a log can be. */
	readonly channels: readonly Channel[];
	/** The glossary; empty in the rulebook that an audit loads. */
	readonly words: readonly Term[];
	readonly builds: Readonly<Record<string, NamedBuild>>;
	/** The packs added, by name. */
	readonly packs: readonly string[];
	/** What a pack changed: rule id and the fields it replaced. */
	readonly changed: readonly { readonly rule: string; readonly pack: string; readonly fields: readonly string[] }[];
}
