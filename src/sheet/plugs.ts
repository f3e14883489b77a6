/** What a wire carries, as far as another wire that touches it is concerned. */
export const sorts = [
	'battery',
	'switched',
	'power-ground',
	'signal-ground',
	'reference-5v',
	'signal-0-5v',
	'signal-pulse',
	'pair-plus',
	'pair-minus',
	'shield',
	'low-driver',
	'high-driver',
	'coil-driver',
	'coil-command',
	'data',
	'lamp',
	'motor',
	'empty',
	'unknown',
] as const;
export type Sort = (typeof sorts)[number];

export const halfNames = ['engine', 'car', 'controller'] as const;
export type HalfName = (typeof halfNames)[number];

/** One cavity of a half of a plug, as the sheet has it. Texts are as typed. */
export interface Pin {
	readonly pin: string;
	readonly wire?: string;
	/** A circuit by any of its names, `empty`, `spare`, or words of the person's own; left out or blank: not known. */
	readonly circuit?: string;
	/** AWG, or a text like `0.75 mm2`. */
	readonly gauge?: number | string;
	readonly joined?: boolean;
	readonly known?: 'measured' | 'paperwork' | 'estimate' | 'not-known';
	readonly note?: string;
	/** The pin of the other half that it touches, where the halves are numbered differently. */
	readonly meets?: string;
	/** Whether this half is the one that feeds the circuit; left out: the worst way round is taken. */
	readonly fed_here?: boolean;
	/** What the wire carries, where its circuit is not recognized. */
	readonly sort?: Sort;
	/** Pins with the same name here are joined in one splice. */
	readonly splice?: string;
	/** Blade width, mm. */
	readonly terminal?: number;
	/** Rating of the fuse in this feed, A; a fusible link is `link`. */
	readonly fused?: number | 'link' | false;
	/** Temperature class of the insulation: ISO 6722 (A, B, C) or SAE J1128 (GPT, GXL, TXL). */
	readonly class?: string;
	readonly twisted?: boolean;
	readonly seal?: boolean;
	/** Only of a shield: which of its ends is grounded. */
	readonly grounded_at?: 'engine' | 'controller' | 'both' | 'none';
}

/** One half of a plug. */
export interface PlugHalf {
	readonly plug: string;
	readonly half: HalfName;
	/** The plug that it meets. */
	readonly mates?: string;
	/** Whether the shells mate pin by pin, or are cut off and spliced circuit by circuit. */
	readonly mates_by?: 'pin' | 'circuit';
	readonly from?: string;
	/** From which side the pins were read. */
	readonly view?: 'face' | 'wires';
	readonly keyed?: 'mates' | 'forced' | 'not-tried';
	readonly lock?: 'holds' | 'broken' | 'missing';
	/** Whether the plug is outside the cabin, where water gets at it. */
	readonly outside?: boolean;
	readonly pins: readonly Pin[];
}
