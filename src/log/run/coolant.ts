import { type Chunk, fresh, joined, onceALog } from '../chunk.ts';
import { lacking, measured } from '../measured.ts';
import { inRun } from '../quantity.ts';
import { noReadings, type Readings, within } from '../series.ts';
import { SlidingMinimum } from '../sliding-minimum.ts';
import { median } from '../statistics.ts';
import { Summary } from '../summary.ts';
import { heldFor, whileOver } from './running.ts';
import { errors } from './tools.ts';

export const most = inRun({
	id: 'log.coolant_highest',
	kind: 'temperature',
	sensor: 'coolant_temp',
	formula: 'the highest coolant temperature that was held for 10 s of running',
	gather: () => heldFor(10, 2, chunk => whileOver(chunk, 'coolant_temp', 400), errors.temperature, ['coolant_temp']),
});

/** What coolant rose in 5 s: each rise once. */
class Rises {
	private readonly lowest = new SlidingMinimum(5);
	/** The most and the second most of the rises that have ended, K. */
	private best = 0;
	private next = 0;
	private top = 0;
	private count = 0;
	private first = Number.NaN;
	private last = Number.NaN;

	take(chunk: Chunk): void {
		const { time, value } = whileOver(chunk, 'coolant_temp', 400);
		if (time.length === 0) return;
		if (this.count === 0) this.first = time[0]!;
		this.count += time.length;
		this.last = time.at(-1)!;
		let { top } = this;
		for (let index = 0; index < time.length; index++) {
			const rise = value[index]! - this.lowest.take(time[index]!, value[index]!);
			if (rise > top) top = rise;
			// It came down, or stopped rising: what it rose is one jump.
			else if (rise < top / 2) {
				this.keep(top);
				top = rise;
			}
		}
		this.top = top;
	}

	private keep(rise: number): void {
		if (rise > this.best) {
			this.next = this.best;
			this.best = rise;
		} else if (rise > this.next) this.next = rise;
	}

	/** Readings a second. */
	get rate(): number {
		return this.count / (this.last - this.first);
	}

	/** The most, or the second most. */
	most(rank: number): number {
		return [this.best, this.next, this.top].sort((a, b) => b - a)[rank - 1]!;
	}
}

const risesIn = onceALog(() => new Rises());

/** The rises of 5 s, the most first: a rise ends before the next may begin. */
const jump = (id: string, rank: number, formula: string) =>
	inRun({
		id,
		kind: 'temperature-difference',
		formula,
		gather() {
			let rises: Rises | undefined;
			return {
				take(chunk) {
					rises = risesIn(chunk);
				},
				result: () => (rises && rises.rate >= 0.95 ? measured(rises.most(rank), 0.5) : lacking('coolant_temp')),
			};
		},
	});

export const jumps = jump(
	'log.coolant_jump',
	1,
	'the most that coolant temperature rose in 5 s of running; of a reading a second',
);
export const second = jump(
	'log.coolant_jump_second',
	2,
	'the second most that it rose in 5 s: one rise decides nothing',
);

/** s of driving before a cold engine that is not warm says something. */
const long = 15 * 60;

/** s of driving: moving where road speed is logged, else engine speed off idle. */
function drivenIn({ ticks, span, declared }: Chunk): number {
	let seconds = 0;
	for (let tick = 1; tick < ticks.time.length; tick++) {
		const before = ticks.time[tick - 1]!;
		const now = ticks.time[tick]!;
		if (before < span[0] || now > span[1] || ticks.unbroken[tick] === 0) continue;
		const road = ticks.road[tick]!;
		const moving = Number.isNaN(road) ? ticks.speed[tick]! > declared.overrun.speed : road > declared.idle.standing;
		if (moving && ticks.speed[tick]! > declared.running.speed) seconds += Math.min(5, now - before);
	}
	return seconds;
}

/** Coolant of the last six minutes of running, and how long was driven. */
class Late {
	private recent: Readings = noReadings;
	driven = 0;

	take(chunk: Chunk): void {
		this.driven += drivenIn(chunk);
		const now = whileOver(chunk, 'coolant_temp', 400);
		const end = now.time.at(-1);
		if (end !== undefined) this.recent = joined([this.recent, now].map(part => within(part, end - 360, end)));
	}

	/** The median from so many to so many seconds before the end. */
	around(from: number, to: number): number {
		const end = this.recent.time.at(-1) ?? 0;
		return median(within(this.recent, end - from, end - to).value);
	}
}

const lateIn = onceALog(() => new Late());

export const plateau = inRun({
	id: 'log.coolant_plateau',
	kind: 'temperature',
	sensor: 'coolant_temp',
	formula: 'median coolant temperature of the last minute of running, of a log with 15 min of driving at least',
	gather() {
		let late: Late | undefined;
		return {
			take(chunk) {
				late = lateIn(chunk);
			},
			result: () =>
				!late || late.driven < long ? lacking('coolant_temp') : measured(late.around(60, 0), 3, ['coolant_temp']),
		};
	},
});

export const gain = inRun({
	id: 'log.coolant_gain_late',
	kind: 'temperature-difference',
	range: [null, null],
	formula:
		'what coolant temperature gained in the last 5 min, of a log with 15 min of driving at least and the air outside over 0 degC',
	gather() {
		let late: Late | undefined;
		const outside = new Summary();
		return {
			take(chunk) {
				late = lateIn(chunk);
				for (const value of fresh(chunk, 'ambient_temp').value) outside.take(value);
			},
			result() {
				if (!late || late.driven < long) return lacking('coolant_temp');
				if (!(median(outside.values) > 273.15)) return lacking('ambient_temp');
				return measured(late.around(60, 0) - late.around(330, 270), 0.5, ['coolant_temp']);
			},
		};
	},
});
