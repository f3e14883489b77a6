import { type Car, numberOf } from './car.ts';
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
	/** Whether something blows; undefined where neither the sheet nor a pressure shows. */
	readonly boosted: boolean | undefined;
	/** Pa abs, undefined where nothing shows. */
	readonly ambient: number | undefined;
	/** What the logged injector pulse is. */
	readonly pulse: PulseForm;
	/** s; how late lambda is, undefined where it was not found. */
	readonly lag: number | undefined;
	/** The part that counts; undefined where there is none or it is not known. */
	readonly full: Interval | undefined;
	/** s: the lift, or a limiter or a fuel cut before it. */
	readonly end: number;
	/** From the first demand to the lift. */
	readonly whole: Interval;
	/** Of a channel, all that is kept round the pull. */
	of(id: string): Readings;
	/** Of a channel, from and to; the whole pull where nothing is said. */
	in(id: string, interval?: Interval): Readings;
	/** rpm at a time. */
	speedAt(time: number): number;
}

/** What a pull's quantities need of the sheet, as a number. */
export const ofCar = ({ car }: Pick<PullView, 'car'>, id: string): number | undefined => numberOf(car, id);
