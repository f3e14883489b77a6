import { percent } from '../../quantities/quantity.ts';
import { type Chunk, during } from '../chunk.ts';
import type { EpisodeKind } from '../episodes.ts';
import { lacking, type Measured, measured } from '../measured.ts';
import { type Accumulator, runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import type { Readings } from '../series.ts';
import { heldAtEach } from '../ticks.ts';
import { medianOf } from './median-of.ts';

type Regime = Extract<EpisodeKind, 'idle' | 'cruise'>;
type Bank = 1 | 2;

/** Short and long trim together, at each reading of the short one while the loop is closed. */
function trims(chunk: Chunk, regime: Regime, bank: Bank): Readings[] {
	return during(chunk, regime, `trim_short_${bank}`, true).map(short => {
		const long = heldAtEach(chunk.of(`trim_long_${bank}`), short.time);
		const loop = heldAtEach(chunk.of('loop_closed'), short.time);
		const kept = Array.from(short.time.keys()).filter(at => !(loop[at] === 0));
		return {
			time: Float64Array.from(kept, at => short.time[at]!),
			value: Float64Array.from(kept, at => short.value[at]! + (Number.isNaN(long[at]!) ? 0 : long[at]!)),
		};
	});
}

/** Of at least 30 s. */
const trim = (regime: Regime, bank: Bank): Accumulator =>
	medianOf(chunk => trims(chunk, regime, bank), sensorErrors.none, [`trim_short_${bank}`, 'coolant_temp'], {
		readings: 10,
		seconds: 30,
	});

const words = { idle: 'at idle', cruise: 'at cruise' } as const;

const ofBank = (regime: Regime, bank: Bank) =>
	runQuantity({
		id: `log.${regime}_trim_${bank}`,
		kind: 'ratio',
		shown: percent,
		range: [-1, null],
		formula: `median of short and long trim of bank ${bank} together ${words[regime]}, warm, loop closed, of 30 s at least`,
		accumulator: () => trim(regime, bank),
	});

export const idle1 = ofBank('idle', 1);
export const idle2 = ofBank('idle', 2);
export const cruise1 = ofBank('cruise', 1);
export const cruise2 = ofBank('cruise', 2);

/** A figure made of the trims of both banks in both regimes, as far as they are known. */
const ofTrims = (
	id: string,
	formula: string,
	make: (idle: readonly number[], cruise: readonly number[]) => number | undefined,
) =>
	runQuantity({
		id,
		kind: 'ratio',
		shown: percent,
		range: [-1, null],
		formula,
		accumulator() {
			const idle = [trim('idle', 1), trim('idle', 2)];
			const cruise = [trim('cruise', 1), trim('cruise', 2)];
			const values = (all: readonly Accumulator[]) =>
				all.map(one => one.result().value).map(value => (typeof value === 'number' ? value : Number.NaN));
			return {
				take(chunk) {
					for (const one of [...idle, ...cruise]) one.take(chunk);
				},
				result(): Measured {
					const value = make(values(idle), values(cruise));
					return value === undefined || !Number.isFinite(value) ? lacking('trim_short_1') : measured(value);
				},
			};
		},
	});

const known = (list: readonly number[]) => list.filter(Number.isFinite);
const more = ([a1, a2]: readonly number[], [b1, b2]: readonly number[]) => Math.max(...known([a1! - b1!, a2! - b2!]));

export const idleHigh = ofTrims('log.idle_trim_high', 'the idle trim of the bank that is given more fuel', idle =>
	Math.max(...known(idle)),
);
export const idleLow = ofTrims('log.idle_trim_low', 'the idle trim of the bank that is given less fuel', idle =>
	Math.min(...known(idle)),
);
export const cruiseHigh = ofTrims(
	'log.cruise_trim_high',
	'the cruise trim of the bank that is given more fuel',
	(_, cruise) => Math.max(...known(cruise)),
);
export const cruiseLow = ofTrims(
	'log.cruise_trim_low',
	'the cruise trim of the bank that is given less fuel',
	(_, cruise) => Math.min(...known(cruise)),
);
export const idleOver = ofTrims(
	'log.idle_trim_over_cruise',
	'idle trim less cruise trim, of the bank where it is more',
	more,
);
export const cruiseOver = ofTrims(
	'log.cruise_trim_over_idle',
	'cruise trim less idle trim, of the bank where it is more',
	(idle, cruise) => more(cruise, idle),
);
export const apart = ofTrims(
	'log.trim_apart',
	'bank 1 less bank 2, of idle and cruise the nearer to 0, as a figure over 0; 0 where the sign changes',
	(idle, cruise) => {
		const [i, c] = [idle[0]! - idle[1]!, cruise[0]! - cruise[1]!];
		return i * c < 0 ? 0 : Math.min(Math.abs(i), Math.abs(c));
	},
);
