import type { Block } from './block.ts';
import { NewReadings, turns } from './new-readings.ts';
import { noReadings, type Readings, Series } from './series.ts';

/** A place where the clock went back or stood open while rows went on. */
export interface ClockJump {
	/** s since the first row. */
	readonly at: number;
	/** s; negative where it went back. */
	readonly by: number;
}

/** Rows from which it is learned how often each channel has a new reading. */
const firstRows = 4000;

/**
 * The new readings of a log, channel by channel, on one clock that never goes back. Only what was not yet judged is kept.
 */
export class ReadingStore {
	private readonly series = new Map<string, Series>();
	private readonly fresh = new Map<string, NewReadings>();
	private held: Block[] | null = [];
	private heldRows = 0;
	private first = Number.NaN;
	private last = Number.NaN;
	private offset = 0;
	private readonly longestGap: number;
	readonly jumps: ClockJump[] = [];
	/** Rows taken, and when the last one was, s since the first. */
	rows = 0;
	now = 0;

	/** `longestGap`: s between two rows beyond which they do not belong together. */
	constructor(longestGap: number) {
		this.longestGap = longestGap;
	}

	push(block: Block): void {
		if (!this.held) {
			this.take(block);
			return;
		}
		this.held.push(block);
		this.heldRows += block.time.length;
		if (this.heldRows >= firstRows) this.settle();
	}

	/** Takes the rows that waited until there were enough of them to learn from. */
	settle(): void {
		const held = this.held ?? [];
		this.held = null;
		const cells = new Map<string, Float64Array>();
		for (const { channels } of held)
			for (const [id, column] of channels) {
				const before = cells.get(id) ?? new Float64Array(0);
				const more = column.subarray(0, firstRows - before.length);
				const all = new Float64Array(before.length + more.length);
				all.set(before);
				all.set(more, before.length);
				cells.set(id, all);
			}
		for (const [id, turn] of turns(cells)) {
			this.fresh.set(id, new NewReadings(turn));
			this.series.set(id, new Series());
		}
		for (const block of held) this.take(block);
	}

	private take({ time, channels }: Block): void {
		const now = this.clocked(time);
		for (const [id, column] of channels) {
			if (!this.series.has(id)) {
				this.series.set(id, new Series());
				this.fresh.set(id, new NewReadings(1));
			}
			this.fresh.get(id)!.takeAll(now, column, this.series.get(id)!);
		}
		this.rows += time.length;
	}

	/** s since the first row, without the jumps back: after one the clock goes on a second later. */
	private clocked(times: Float64Array): Float64Array {
		let { first, last, offset, now } = this;
		const clocked = new Float64Array(times.length);
		for (let row = 0; row < times.length; row++) {
			const time = times[row]!;
			if (Number.isNaN(first)) first = last = time;
			const by = time - last;
			if (by < 0) offset += 1 - by;
			last = time;
			now = time - first + offset;
			if (by < 0 || by > this.longestGap) this.jumps.push({ at: now, by });
			clocked[row] = now;
		}
		this.first = first;
		this.last = last;
		this.offset = offset;
		this.now = now;
		return clocked;
	}

	/** The readings of a channel that are kept now; none where it is not logged. */
	readonly of = (id: string): Readings => this.series.get(id)?.all ?? noReadings;

	/** Channels with readings. */
	get channels(): string[] {
		return [...this.series].filter(([, { length }]) => length > 0).map(([id]) => id);
	}

	has(id: string): boolean {
		return this.series.has(id);
	}

	/** Readings kept now, of all channels. */
	get size(): number {
		let size = 0;
		for (const { length } of this.series.values()) size += length;
		return size;
	}

	dropBefore(time: number): void {
		for (const series of this.series.values()) series.dropBefore(time);
	}
}
