import type { Ambient } from './ambient.ts';
import type { DemandSource } from './demand.ts';
import type { Episode } from './episodes.ts';
import type { Measured } from './measured.ts';
import type { PullPoints } from './points.ts';

/** What a log came to. */
export interface Analysis {
	/** In the order of time. */
	readonly episodes: readonly Episode[];
	/** By quantity id, of every quantity of a whole log. */
	readonly run: ReadonlyMap<string, Measured>;
	/** By quantity id, one a pull in their order. */
	readonly pulls: ReadonlyMap<string, readonly Measured[]>;
	/** What was binned of each pull: for pictures, and for whoever fits the model to it. */
	readonly points: readonly PullPoints[];
	/** s by which lambda is late; null where it lines up with nothing. */
	readonly lag: number | null;
	/** Pa abs, and what it was read from; null where nothing has it. */
	readonly ambient: { readonly value: number; readonly from: Ambient['from'] } | null;
	readonly demand: DemandSource;
	/** What the injector pulse was taken for, in words; null where none is logged. */
	readonly pulse: string | null;
	/** New readings by channel. */
	readonly samples: ReadonlyMap<string, { readonly count: number; readonly low: number; readonly high: number }>;
	/** New readings of engine speed a second; null without any. */
	readonly rate: number | null;
	/** s from the first row to the last. */
	readonly seconds: number;
}
