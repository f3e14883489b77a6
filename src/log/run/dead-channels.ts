import { type Chunk, newIn } from '../chunk.ts';
import { exactly } from '../measured.ts';
import { runQuantity } from '../quantity.ts';
import { firstFrom, type Readings } from '../series.ts';
import { heldAtEach } from '../ticks.ts';

/** s that a channel must have shown one value, and rpm over which engine speed must have moved meanwhile. */
const [minTime, minSpan] = [60, 1000];

export const dead = runQuantity({
	id: 'log.dead_channels',
	kind: 'list',
	formula:
		'channels that showed one value for 60 s while engine speed spanned 1000 rpm, or all through a pull, where they must move; and those with impossible values',
	accumulator() {
		const watched = new Map<string, Stillness>();
		const found = new Set<string>();
		return {
			take(chunk) {
				for (const id of chunk.moving.running) {
					if (!isWatched(chunk, id)) continue;
					const watch = watched.get(id) ?? new Stillness();
					watched.set(id, watch);
					if (watch.take(chunk, id)) found.add(id);
				}
				for (const { in: read } of chunk.pulls)
					for (const id of chunk.moving.pull) {
						const { value } = read(id);
						if (value.length >= 10 && value.every(one => one === value[0])) found.add(id);
					}
				for (const id of chunk.impossible) found.add(id);
			},
			result: () => exactly([...found].sort()),
		};
	},
});

/** A throttle that does not follow the foot need not move; a derived channel is dead where its source is. */
function isWatched({ demand, logged }: Chunk, id: string): boolean {
	return logged.has(id) && !(id.startsWith('throttle') && demand !== 'throttle');
}

/** One value since when, and the least and most of engine speed since then. */
class Stillness {
	private value = Number.NaN;
	private since = 0;
	private low = 0;
	private high = 0;

	take(chunk: Chunk, id: string): boolean {
		const all = newIn(chunk, id);
		const from = this.unchangedFrom(all);
		const [time, value] = [all.time.subarray(from), all.value.subarray(from)];
		const speed = heldAtEach(chunk.of('engine_speed'), time);
		const running = chunk.declared.running.speed;
		let dead = false;
		let { value: last, since, low, high } = this;
		if (from > 0) last = Number.NaN;
		for (let index = 0; index < time.length; index++) {
			const [rpm, now] = [speed[index]!, value[index]!];
			const stopped = now === 0 && id === 'road_speed';
			if (now !== last || stopped || !(rpm > running)) {
				last = stopped ? Number.NaN : now;
				since = time[index]!;
				low = high = rpm;
			} else {
				if (rpm < low) low = rpm;
				if (rpm > high) high = rpm;
				if (high - low >= minSpan && time[index]! - since >= minTime) dead = true;
			}
		}
		this.value = last;
		this.since = since;
		this.low = low;
		this.high = high;
		return dead;
	}

	/** The first reading of the first stretch of one value that is long enough, else of the last: all before says nothing. */
	private unchangedFrom({ time, value }: Readings): number {
		let begin = 0;
		let began = value[0] === this.value ? this.since : (time[0] ?? 0);
		for (;;) {
			// Looked for from the end of what would be long enough: where a channel moves, most readings are never looked at.
			let end = firstFrom(time, began + minTime - 1e-6);
			while (end < time.length && !(time[end]! - began >= minTime)) end++;
			let start = Math.min(end, value.length - 1);
			while (start > begin && value[start] === value[start - 1]) start--;
			if (start <= begin || end >= value.length) return Math.max(start, 0);
			begin = start;
			began = time[start]!;
		}
	}
}
