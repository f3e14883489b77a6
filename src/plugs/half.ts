import { areaOf, readGauge } from '../sheet/gauge.ts';
import type { HalfName, Pin, PlugHalf, Sort } from '../sheet/plugs.ts';
import type { Circuit, Vocabulary } from './circuit.ts';
import { readColor } from './color.ts';
import { isAirbag, type Recognized, recognizerOf } from './recognize.ts';

/** A pin with what its texts stand for. */
export interface ReadPin {
	readonly raw: Pin;
	/** Which side it is on. */
	readonly half: HalfName;
	/** Its name as compared: capitals, no spaces around. */
	readonly pin: string;
	readonly recognized: Recognized;
	readonly circuit: Circuit | null;
	/** Its sort in the table of meetings; `unknown` where nothing says it. */
	readonly sort: Sort;
	readonly color: string | null;
	/** Copper, m2; null where it is not stated. */
	readonly area: number | null;
	readonly airbag: boolean;
}

/** A half with what the texts of its pins stand for. */
export interface ReadHalf {
	readonly raw: PlugHalf;
	readonly plug: string;
	readonly half: HalfName;
	readonly pins: readonly ReadPin[];
}

/** A pin's name as two halves compare it. */
export const pinName = (text: string): string => text.trim().toUpperCase();

/** Reads the texts of a half: circuits, colors, sizes of wire. */
export function readHalf(raw: PlugHalf, vocabulary: Vocabulary): ReadHalf {
	return { raw, plug: raw.plug.trim(), half: raw.half, pins: raw.pins.map(pin => readPin(pin, raw.half, vocabulary)) };
}

function readPin(raw: Pin, half: HalfName, vocabulary: Vocabulary): ReadPin {
	const text = raw.circuit ?? '';
	const recognized = recognizerOf(vocabulary)(text);
	const circuit = recognized.is === 'circuit' ? recognized.circuit : null;
	return {
		raw,
		half,
		pin: pinName(raw.pin),
		recognized,
		circuit,
		sort: circuit?.sort ?? (isSpare(recognized) ? 'empty' : (raw.sort ?? 'unknown')),
		color: raw.wire === undefined ? null : readColor(raw.wire),
		area: copperOf(raw.gauge),
		airbag: circuit?.id === 'airbag' || isAirbag(`${text} ${raw.note ?? ''}`),
	};
}

const isSpare = ({ is }: Recognized): boolean => is === 'empty' || is === 'spare';

/** Copper of a gauge as typed, m2. */
function copperOf(said: Pin['gauge']): number | null {
	const gauge = readGauge(said);
	return gauge && areaOf(gauge);
}

/** Whether a wire of this sort brings 12 V. */
export const isFeed = (sort: Sort): boolean => sort === 'battery' || sort === 'switched';

/** Whether it ends on a ground, of whatever sort. */
export const isGround = (sort: Sort): boolean =>
	sort === 'power-ground' || sort === 'signal-ground' || sort === 'shield';
