import { type Chunk, fresh } from '../chunk.ts';
import { lacking, measured, plainly } from '../measured.ts';
import { inRun } from '../quantity.ts';
import { type Readings, within } from '../series.ts';
import { heldAtEach } from '../ticks.ts';

export const pulls = inRun({
	id: 'log.pulls',
	kind: 'count',
	formula: 'how many pulls were found: foot down for 1.5 s while engine speed rises by 1000 rpm in one gear',
	gather() {
		let [count, foot] = [0, false];
		return {
			take({ pulls: found, demand, logged }) {
				count += found.length;
				foot = logged.has('engine_speed') && demand !== 'manifold';
			},
			// Where manifold pressure stands in for the foot, none found does not say that there was none.
			result: () => (count > 0 || foot ? measured(count) : lacking('pedal')),
		};
	},
});

export const numbers = inRun({
	id: 'log.pull_numbers',
	kind: 'list',
	formula: 'the numbers of the pulls, as text, from 1',
	gather() {
		const found: string[] = [];
		return {
			take: ({ pulls: views }) => {
				for (const { episode } of views) found.push(String(episode.number));
			},
			result: () => plainly(found),
		};
	},
});

export const source = inRun({
	id: 'log.demand',
	kind: 'words',
	formula:
		'what stands for the foot: the pedal, else a throttle that moves enough, else manifold pressure near ambient with engine speed rising',
	gather() {
		let found: string | undefined;
		return {
			take: ({ demand }) => {
				found = demand;
			},
			result: () => plainly(found),
		};
	},
});

export const rate = inRun({
	id: 'log.rate',
	kind: 'ratio',
	unit: '1/s',
	formula: 'new readings of engine speed a second',
	gather() {
		let [count, seconds] = [0, 0];
		return {
			take(chunk) {
				const { time } = fresh(chunk, 'engine_speed');
				count += time.length;
				seconds += chunk.span[1] - chunk.span[0];
			},
			// From the first to the last there is one gap less than there are readings.
			result: () => (seconds > 0 && count > 0 ? plainly((count - 1) / seconds) : plainly(undefined, 'engine_speed')),
		};
	},
});

export const jumps = inRun({
	id: 'log.clock_jumps',
	kind: 'count',
	formula: 'how often the clock went back, or stood open for more than 2 s while the engine ran',
	gather() {
		let count = 0;
		return {
			take({ jumps, ticks, declared: { running }, span: [from, to] }) {
				const runs = (at: number) => {
					const near = within({ time: ticks.time, value: ticks.speed }, at - 6, at + 6);
					const before = within(near, 0, at - 1e-6).value.at(-1);
					const after = within(near, at, at + 6).value[0];
					return before !== undefined && after !== undefined && Math.min(before, after) > running.speed;
				};
				for (const { at, by } of jumps) if (at >= from && at < to && (by < 0 || runs(at))) count++;
			},
			result: () => measured(count),
		};
	},
});

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
		for (let index = 1; index < value.length; index++) {
			if (value[index] === value[index - 1]) continue;
			if (time[index - 1]! - began >= still) return begin;
			begin = index;
			began = time[index]!;
		}
		return begin;
	}
}

export const knockMoved = inRun({
	id: 'log.knock_proved',
	kind: 'yes-no',
	formula:
		'yes where knock retard was ever anything but 0, or the sheet has the knock sensor fitted and wired; else not known',
	gather() {
		let [moved, logged, fitted] = [false, false, false];
		return {
			take(chunk) {
				const { value } = fresh(chunk, 'knock_retard');
				logged ||= value.length > 0;
				moved ||= value.some(one => one !== 0);
				fitted ||= chunk.car.value('sensors.knock') === 'fitted-wired';
			},
			result: () => plainly(logged && (moved || fitted) ? true : undefined, logged ? 'sensors.knock' : 'knock_retard'),
		};
	},
});

export const knockPulls = inRun({
	id: 'log.knock_pulls',
	kind: 'count',
	formula: 'in how many pulls 1 deg or more was taken out for knock',
	gather() {
		let [count, logged] = [0, false];
		return {
			take({ pulls: views }) {
				for (const view of views) {
					const { value } = view.in('knock_retard');
					logged ||= value.length > 0;
					if (value.some(one => one >= 1 - 1e-9)) count++;
				}
			},
			result: () => (logged ? measured(count) : plainly(undefined, 'knock_retard')),
		};
	},
});
