import type { Car } from './car.ts';
import type { Declared } from './declared.ts';
import type { Episode } from './episodes.ts';
import type { PulseForm } from './pulse-form.ts';
import type { Readings } from './series.ts';

/** From and to, s since the first row. */
export type Interval = readonly [from: number, to: number];

/** One pull with everything that a quantity of it may look at. */
export interface PullView {
	readonly episode: Episode;
	readonly car: Car;
	readonly declared: Declared;
	/** Whether the engine is boosted; undefined where neither the sheet nor a pressure shows. */
	readonly boosted: boolean | undefined;
	/** Pa abs, undefined where nothing shows. */
	readonly ambient: number | undefined;
	/** How the injector pulse is logged. */
	readonly pulse: PulseForm;
	/** s; how late lambda is, undefined where it was not found. */
	readonly lag: number | undefined;
	/** The part that counts; undefined where there is none or it is not known. */
	readonly full: Interval | undefined;
	/** s: the lift, or a limiter or a fuel cut before it. */
	readonly end: number;
	/** From the first demand to the lift. */
	readonly whole: Interval;
	/** A channel's readings in all of the log that is in memory. */
	of(id: string): Readings;
	/** A channel's readings in an interval; in the whole pull without one. */
	in(id: string, interval?: Interval): Readings;
	/** rpm at a time. */
	speedAt(time: number): number;
}
