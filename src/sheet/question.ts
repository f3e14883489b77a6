import type { Expression } from '../expressions/tree.ts';
import type { Kind } from '../units/kinds.ts';
import type { UnitSet } from '../units/shown.ts';
import type { Access } from './access.ts';
import type { Stage } from './stage.ts';
import type { Text } from './text.ts';

/** Kinds of answers that are lists. */
export const listKinds = [
	'several',
	'per-cylinder',
	'firing-order',
	'pairs',
	'curve',
	'loads',
	'codes',
	'circuits',
] as const;

/** What an answer looks like; a kind of the units room is one number with a unit. */
export type AnswerKind = Kind | 'whole' | 'choice' | 'teeth' | (typeof listKinds)[number];

/** Whether an answer of this kind is a list. */
export const isList = (kind: AnswerKind): kind is (typeof listKinds)[number] =>
	(listKinds as readonly string[]).includes(kind);

export type { UnitSet };

/** What it takes to find an answer out, least first: known without, a paper, a look, a gauge or meter, a test. */
export const efforts = ['known', 'paper', 'look', 'gauge', 'test'] as const;
export type Effort = (typeof efforts)[number];
/** Whether it takes neither tool nor test. */
export const isAtOnce = (effort: Effort): boolean => efforts.indexOf(effort) <= efforts.indexOf('look');

/** A usual value: used, and said to be used, when the answer is missing. Cases are tried in order; a case without `when` holds. */
export interface UsualCase {
	readonly when?: Expression;
	readonly value: Expression;
	/** How far off it may be: a difference in the canonical unit, or a share of the value. */
	readonly spread: { readonly by: number; readonly relative: boolean };
	/** The pack that gave it, when it is not the rulebook's own. */
	readonly from?: string;
}

/** One question of the interview, as compiled from its topic file. Numbers are in canonical units. */
export interface Question {
	readonly id: string;
	/** A short name for lists and panels: `crank sensor plug, harness side`. */
	readonly label: string;
	readonly ask: Text;
	readonly how: Text;
	/** Of `several`: how each choice is found out, where that differs. */
	readonly howEach?: Readonly<Record<string, Text>>;
	readonly kind: AnswerKind;
	/** The kinds of the numbers inside a list answer: one for per-cylinder and loads, two for a curve. */
	readonly of: readonly Kind[];
	/** The shown unit of each number in the answer, for each unit set; empty for choices and plain counts. */
	readonly unit: Readonly<Record<UnitSet, readonly string[]>>;
	/** Choice id to the words a person reads. */
	readonly choices: Readonly<Record<string, string>>;
	/** The same as it reads inside a sentence of a rule; null where no rule may print a choice of it. */
	readonly said: Readonly<Record<string, string>> | null;
	/** Of `several`: it was a question for one choice, so that a bare choice is taken, and one choice is written as such. */
	readonly wasChoice: boolean;
	readonly plausible: readonly [number, number] | null;
	readonly hard: readonly [number, number] | null;
	/** Another kind of flow that is taken too, and the density it is read at: a number (kg/m3) or a quantity. */
	readonly takes: { readonly kind: Kind; readonly at: number | string } | null;
	readonly quick: boolean | Expression;
	readonly askWhen: Expression | null;
	/** The question without whose answer this one is not asked: a figure's own conditions. */
	readonly follows: string | null;
	/** Where false, such a build is not asked for it, and no line waits for it; an answer counts all the same. */
	readonly wantedWhen: Expression | null;
	readonly usual: readonly UsualCase[];
	readonly effort: Effort;
	/** Hands-on time to find it out, min: a usual figure. */
	readonly minutes: number;
	readonly access: Access;
	/** The stage from which it can be answered at all: what only a running or a driven car shows. */
	readonly known_from: Stage | null;
	/** A figure that somebody decides: read off where it was set it is exact, for nothing is measured; guessed it strays like any. */
	readonly target: boolean;
	/** The quantity of a log that settles it. */
	readonly logged: string | null;
	readonly cautions: readonly string[];
	readonly section: string;
	readonly topic: string;
}

/** The choices in an answer to `several`; a bare one, as older sheets have it, is a list of one. */
export const choicesIn = (value: unknown): readonly string[] =>
	typeof value === 'string' ? [value] : Array.isArray(value) ? (value as string[]) : [];

/** A list of choices as a sheet has it: one alone stays a bare text where it always was one. */
export const asWritten = ({ wasChoice }: Question, chosen: readonly string[]): readonly string[] | string =>
	wasChoice && chosen.length === 1 ? chosen[0]! : chosen;

/** Choices that cannot stand beside others in an answer of the kind `several`. */
export const standAlone: readonly string[] = ['none', 'none-known', 'none-of-these'];
