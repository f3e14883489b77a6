import type { QuantityKind } from '../quantities/quantity.ts';
import type { Chunk } from './chunk.ts';
import type { Measured } from './measured.ts';
import type { PullView } from './pull.ts';

/** `supply_volts`: the volts of battery and pump, read by one instrument. */
export type Sensor =
	| 'lambda'
	| 'manifold_pressure'
	| 'fuel_pressure'
	| 'oil_pressure'
	| 'supply_volts'
	| 'meter_volts'
	| 'throttle_volts'
	| 'coolant_temp'
	| 'charge_temp'
	| 'injector_pulse';

/** A quantity that a log gives: what it is, as of every quantity of the model. */
interface Described {
	readonly id: string;
	readonly kind: QuantityKind;
	readonly unit?: string;
	readonly shown?: { readonly us: string; readonly metric: string };
	readonly formula: string;
	readonly source: readonly string[];
	readonly nature: 'exact' | 'estimate';
	readonly range?: readonly [number | null, number | null];
	/** The sensor whose error the figure has whole: figures of one sensor are off together. Left out of differences. */
	readonly sensor?: Sensor;
}

/** One figure a pull. */
export interface PullQuantity extends Described {
	readonly logged: 'pull';
	/** The pull that an answer takes. */
	readonly worst?: 'highest' | 'lowest';
	measure(pull: PullView): Measured;
}

/** What one quantity keeps while the log goes by, in bounded memory. */
export interface Accumulator {
	take(chunk: Chunk): void;
	result(): Measured;
}

/** One figure a log. */
export interface RunQuantity extends Described {
	readonly logged: 'run';
	/** The word that says that nothing was seen: it does not overrule somebody who saw something. */
	readonly reassuring?: string;
	accumulator(): Accumulator;
}

export type LogQuantity = PullQuantity | RunQuantity;

type Declaration<Q> = Omit<Q, 'logged' | 'source' | 'nature'> & Partial<Pick<Described, 'source' | 'nature'>>;

/** Declares a quantity of each pull. What is read off a log is exact by definition; an estimate says so. */
export const pullQuantity = (declared: Declaration<PullQuantity>): PullQuantity => ({
	source: ['definition'],
	nature: 'exact',
	...declared,
	logged: 'pull',
});

/** Declares a quantity of a whole log. */
export const runQuantity = (declared: Declaration<RunQuantity>): RunQuantity => ({
	source: ['definition'],
	nature: 'exact',
	...declared,
	logged: 'run',
});
