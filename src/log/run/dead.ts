import { type Chunk, fresh } from '../chunk.ts';
import { plainly } from '../measured.ts';
import { inRun } from '../quantity.ts';
import { firstFrom, type Readings } from '../series.ts';
import { heldAtEach } from '../ticks.ts';

/** s of one value, and the rpm that it must have seen meanwhile. */
const [still, spans] = [60, 1000];

export const dead = inRun({
	id: 'log.dead_channels',
	kind: 'list',
	formula:
		'channels that showed one value for 60 s while engine speed spanned 1000 rpm, or all through a pull, where they must move; and those with impossible values',
	gather() {
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
			result: () => plainly([...found].sort()),
		};
	},
});

/** A throttle that does not move as a foot does (an engine without one to speak of) need not move; derived ones are their source's. */
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
		const all = fresh(chunk, id);
		const from = this.standsFrom(all);
		const [time, value] = [all.time.subarray(from), all.value.subarray(from)];
		const speed = heldAtEach(chunk.of('engine_speed'), time);
		const running = chunk.declared.running.speed;
		let dead = false;
		let { value: last, since, low, high } = this;
		if (from > 0) last = Number.NaN;
		for (let index = 0; index < time.length; index++) {
			const [rpm, now] = [speed[index]!, value[index]!];
			const standing = now === 0 && id === 'road_speed';
			if (now !== last || standing || !(rpm > running)) {
				last = standing ? Number.NaN : now;
				since = time[index]!;
				low = high = rpm;
			} else {
				if (rpm < low) low = rpm;
				if (rpm > high) high = rpm;
				if (high - low >= spans && time[index]! - since >= still) dead = true;
			}
		}
		this.value = last;
		this.since = since;
		this.low = low;
		this.high = high;
		return dead;
	}

	/** The first reading of the first stretch of one value that is long enough, else of the last: all before says nothing. */
	private standsFrom({ time, value }: Readings): number {
		let begin = 0;
		let began = value[0] === this.value ? this.since : (time[0] ?? 0);
		for (;;) {
			// Looked for from the end of what would be long enough: where a channel moves, most readings are never looked at.
			let end = firstFrom(time, began + still - 1e-6);
			while (end < time.length && !(time[end]! - began >= still)) end++;
			let start = Math.min(end, value.length - 1);
			while (start > begin && value[start] === value[start - 1]) start--;
			if (start <= begin || end >= value.length) return Math.max(start, 0);
			begin = start;
			began = time[start]!;
		}
	}
}
