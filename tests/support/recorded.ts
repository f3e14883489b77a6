import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Channel } from '../../src/log/channel.ts';
import { type ColumnChoices, noChoices, parseMapping } from '../../src/log/column-mapping.ts';
import { openRecording } from '../../src/log/record.ts';

const built = fileURLToPath(new URL('../../dist/rulebook.json', import.meta.url));

let read: readonly Channel[] | undefined;

/** The channels of rules/channels.yaml, as built. */
export function channels(): readonly Channel[] {
	read ??= JSON.parse(readFileSync(built, 'utf8')).channels as readonly Channel[];
	return read;
}

/** What `--channel` and `--not` say. */
export const choices = (mappings: readonly string[], ignored: readonly string[] = []): ColumnChoices => ({
	mappings: mappings.map(text => parseMapping(text)!),
	ignored,
});

/** Bytes as they come from a disk, so many at a time. */
export async function* pieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
	for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}

/** A log read whole: what its columns were taken for, and all readings by channel. */
export async function recorded(text: string | Uint8Array, chosen: ColumnChoices = noChoices, size = 65_536) {
	const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
	const recording = await openRecording(pieces(bytes, size), channels(), chosen);
	const time: number[] = [];
	const readings: Record<string, number[]> = {};
	for await (const block of recording.blocks) {
		time.push(...block.time);
		for (const [id, values] of block.channels) (readings[id] ??= []).push(...values);
	}
	const { channels: taken, unused, notes, totals } = recording;
	const by = Object.fromEntries(taken.map(({ channel, header, unit, by }) => [channel, `${header}|${unit}|${by}`]));
	return { taken: by, unused, notes, totals, time, readings };
}
