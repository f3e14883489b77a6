import { type Chunk, newIn, oncePerChunk } from '../chunk.ts';
import { masked, type Readings } from '../series.ts';
import { heldAtEach } from '../ticks.ts';

/** rpm over which an alternator charges and oil pressure is up. Common practice. */
export const aboveIdle = 1300;

const overIn = oncePerChunk(() => new Map<string, Readings>());

/** New readings of a channel while engine speed is over a figure; warm where asked. */
export function whileOver(chunk: Chunk, channel: string, rpm: number, warm = false): Readings {
	const known = overIn(chunk);
	const key = `${channel} ${rpm} ${warm}`;
	let found = known.get(key);
	if (!found) known.set(key, (found = readOver(chunk, channel, rpm, warm)));
	return found;
}

function readOver(chunk: Chunk, channel: string, rpm: number, warm: boolean): Readings {
	const readings = newIn(chunk, channel);
	const speed = heldAtEach(chunk.of('engine_speed'), readings.time, 2.5);
	const coolant = warm ? heldAtEach(chunk.of('coolant_temp'), readings.time, 60) : null;
	const keep = new Uint8Array(speed.length);
	for (let index = 0; index < keep.length; index++) {
		const isWarm = coolant === null || chunk.warmth.isWarmWith(coolant[index]!, readings.time[index]!);
		keep[index] = speed[index]! > rpm && isWarm ? 1 : 0;
	}
	return masked(readings, keep);
}
