import { within } from './series.ts';
import { maxOf, minOf } from './statistics.ts';
import type { ReadingStore } from './store.ts';

/** By channel: how many new readings there were, and the least and most of them. */
export type Samples = Map<string, { readonly count: number; readonly low: number; readonly high: number }>;

/** Adds the new readings between two times. */
export function addSamples(samples: Samples, store: ReadingStore, from: number, until: number): void {
	for (const id of store.channels) {
		const { value } = within(store.of(id), from, until);
		const seen = samples.get(id) ?? { count: 0, low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
		samples.set(id, {
			count: seen.count + value.length,
			low: minOf(value, seen.low),
			high: maxOf(value, seen.high),
		});
	}
}
