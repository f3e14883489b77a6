import type { Expression } from '../expressions/tree.ts';
import type { Sort } from '../sheet/plugs.ts';

/** The places that a circuit joins. */
export const ends = ['controller', 'engine', 'gearbox', 'tank', 'car'] as const;
export type End = (typeof ends)[number];

/** When a meter looks at a pin: plugs apart in the first three. */
export const meterStates = ['key-off', 'key-on', 'crank', 'plugged-in-key-on'] as const;
export type MeterState = (typeof meterStates)[number];

/** What a meter shows in a state, and what it means when it does not. */
export type Reads = Readonly<Partial<Record<MeterState, readonly [expect: string, otherwise: string]>>>;

/** What happens at one pin if the halves are pushed together now, worst first. */
export const meetingWords = ['burns', 'kills', 'wrong', 'unknown', 'moved', 'nothing', 'same'] as const;
export type MeetingWord = (typeof meetingWords)[number];

/** A meeting with its reason; `harm` and `stage` where they are worse than usual for it. */
export interface Meeting {
	readonly meeting: MeetingWord;
	readonly why: string;
	readonly harm?: string;
	readonly stage?: string;
}

/** One circuit that plugs carry. Electrical figures in A and m, common practice. */
export interface Circuit {
	readonly id: string;
	readonly title: string;
	/** What it is for. */
	readonly words: string;
	readonly synonyms: readonly string[];
	readonly sort: Sort;
	/** First the end that a meter looks at: the sensor, the load, the feed. */
	readonly ends: readonly [End, End];
	/** Whether the controller reads it or sends it; null where neither or it does not matter. */
	readonly direction: 'to controller' | 'from controller' | null;
	/** When the engine needs it; null: never. With its text for people. */
	readonly required: Expression | null;
	readonly when: string | null;
	/** Stage and harm where it is needed and missing. */
	readonly ifMissing: readonly [stage: string, harm: string];
	readonly comfort: boolean;
	/** May stand at several pins. */
	readonly shared: boolean;
	readonly twistedWith: string | null;
	readonly load: number | null;
	readonly loadFrom: string | null;
	readonly length: number | null;
	readonly lengthFrom: string | null;
	readonly fuse: number | null;
	readonly reads: Reads;
	/** What it is when it meets a ground, a feed, another circuit of its sort; the worse of this and the table counts. */
	readonly grounded: Meeting | null;
	readonly fed: Meeting | null;
	readonly crossed: Meeting | null;
}

/** A name that stands for more than one circuit. */
export interface Unclear {
	readonly names: readonly string[];
	readonly circuits: readonly string[];
}

/** Bags of words (`words.ts`), each with the ids of the circuits that it stands for. */
type Bags = readonly (readonly [bag: string, circuits: readonly string[]])[];

/** Every name of the circuits, with all its words and without those that add little, and the names that are unclear. */
export interface NameIndex {
	readonly whole: Bags;
	readonly bare: Bags;
	readonly unclear: Bags;
}

/** Everything that rules/circuits.yaml and rules/meetings.yaml say of plugs. */
export interface Vocabulary {
	readonly circuits: readonly Circuit[];
	/** A word to the words that it stands for. */
	readonly abbreviations: Readonly<Record<string, string>>;
	readonly filler: readonly string[];
	readonly unclear: readonly Unclear[];
	readonly sorts: Readonly<Record<string, { readonly words: string; readonly reads: Reads }>>;
	/** A sort that meets others as another one does. */
	readonly sameAs: Readonly<Record<string, string>>;
	/** Two sorts in alphabetical order, a space between, to their meeting. */
	readonly meetings: Readonly<Record<string, Meeting>>;
	/** Worked out when the rules are compiled: it takes longer than all else that an audit does with plugs. */
	readonly index: NameIndex;
	/** The names as `nameSearch` keeps them, where the build has prepared them. */
	readonly search?: string;
}

/** The key of two sorts in the table of meetings. */
export const pairKey = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** The answer that says on which side of the plug to the vehicle the controller sits. */
export const controllerPlace = 'harness.controller_place';
