import { type Chunk, concatenated, during, newIn, oncePerLog } from '../chunk.ts';
import { lacking, measured } from '../measured.ts';
import { runQuantity } from '../quantity.ts';
import { sensorErrors } from '../sensor-errors.ts';
import { noReadings, type Readings, within } from '../series.ts';
import { SlidingMinimum } from '../sliding-minimum.ts';
import { median } from '../statistics.ts';
import { Summary } from '../summary.ts';
import { heldFor } from './held-for.ts';
import { medianOf } from './median-of.ts';
import { whileOver } from './while-over.ts';

export const most = runQuantity({
	id: 'log.coolant_highest',
	kind: 'temperature',
	sensor: 'coolant_temp',
	formula: 'the highest coolant temperature that was held for 10 s of running',
	accumulator: () =>
		heldFor(10, 2, chunk => whileOver(chunk, 'coolant_temp', chunk.declared.running.speed), sensorErrors.temperature, [
			'coolant_temp',
		]),
});

/** By how much coolant rose in 5 s: each rise once. */
class Rises {
	private readonly lowest = new SlidingMinimum(5);
	/** The largest and the second largest of the rises that have ended, and the one that goes on, K. */
	private largest = 0;
	private second = 0;
	private current = 0;
	private count = 0;
	private first = Number.NaN;
	private last = Number.NaN;

	take(chunk: Chunk): void {
		const { time, value } = whileOver(chunk, 'coolant_temp', chunk.declared.running.speed);
		if (time.length === 0) return;
		if (this.count === 0) this.first = time[0]!;
		this.count += time.length;
		this.last = time.at(-1)!;
		let { current } = this;
		for (let index = 0; index < time.length; index++) {
			const rise = value[index]! - this.lowest.take(time[index]!, value[index]!);
			if (rise > current) current = rise;
			// It came down, or stopped rising: the rise so far is one jump.
			else if (rise < current / 2) {
				this.end(current);
				current = rise;
			}
		}
		this.current = current;
	}

	private end(rise: number): void {
		if (rise > this.largest) {
			this.second = this.largest;
			this.largest = rise;
		} else if (rise > this.second) this.second = rise;
	}

	/** Readings a second. */
	get rate(): number {
		return this.count / (this.last - this.first);
	}

	/** K: the largest for rank 1, the second largest for 2. */
	ranked(rank: number): number {
		return [this.largest, this.second, this.current].sort((a, b) => b - a)[rank - 1]!;
	}
}

const risesIn = oncePerLog(() => new Rises());

/** The largest rises of 5 s: one ends before the next may begin. */
const jump = (id: string, rank: number, formula: string) =>
	runQuantity({
		id,
		kind: 'temperature-difference',
		formula,
		accumulator() {
			let rises: Rises | undefined;
			return {
				take(chunk) {
					rises = risesIn(chunk);
				},
				result: () => (rises && rises.rate >= 0.95 ? measured(rises.ranked(rank), 0.5) : lacking('coolant_temp')),
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

/** s of driving in which an engine in order gets warm. Common practice. */
const warmUpDrive = 15 * 60;

/** s of driving: moving where road speed is logged, else engine speed off idle. */
function drivenSeconds({ ticks, span, declared }: Chunk): number {
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
class LastMinutes {
	private recent: Readings = noReadings;
	driven = 0;

	take(chunk: Chunk): void {
		this.driven += drivenSeconds(chunk);
		const now = whileOver(chunk, 'coolant_temp', chunk.declared.running.speed);
		const end = now.time.at(-1);
		if (end !== undefined) this.recent = concatenated([this.recent, now].map(part => within(part, end - 360, end)));
	}

	/** The median from so many to so many seconds before the end, K. */
	medianBefore(from: number, to: number): number {
		const end = this.recent.time.at(-1) ?? 0;
		return median(within(this.recent, end - from, end - to).value);
	}
}

const lastMinutesIn = oncePerLog(() => new LastMinutes());

export const plateau = runQuantity({
	id: 'log.coolant_plateau',
	kind: 'temperature',
	sensor: 'coolant_temp',
	formula: 'median coolant temperature of the last minute of running, of a log with 15 min of driving at least',
	accumulator() {
		let late: LastMinutes | undefined;
		return {
			take(chunk) {
				late = lastMinutesIn(chunk);
			},
			result: () =>
				!late || late.driven < warmUpDrive
					? lacking('coolant_temp')
					: measured(late.medianBefore(60, 0), 3, ['coolant_temp']),
		};
	},
});

export const gain = runQuantity({
	id: 'log.coolant_gain_late',
	kind: 'temperature-difference',
	range: [null, null],
	formula:
		'what coolant temperature gained in the last 5 min, of a log with 15 min of driving at least and the air outside over 0 degC',
	accumulator() {
		let late: LastMinutes | undefined;
		const outside = new Summary();
		return {
			take(chunk) {
				late = lastMinutesIn(chunk);
				for (const value of newIn(chunk, 'ambient_temp').value) outside.take(value);
			},
			result() {
				if (!late || late.driven < warmUpDrive) return lacking('coolant_temp');
				if (!(median(outside.values) > 273.15)) return lacking('ambient_temp');
				return measured(late.medianBefore(60, 0) - late.medianBefore(330, 270), 0.5, ['coolant_temp']);
			},
		};
	},
});

export const cruiseCoolant = runQuantity({
	id: 'log.cruise_coolant',
	kind: 'temperature',
	sensor: 'coolant_temp',
	formula: 'median coolant temperature at cruise, warm',
	accumulator: () =>
		medianOf(chunk => during(chunk, 'cruise', 'coolant_temp', true), sensorErrors.temperature, ['coolant_temp'], {
			readings: 1,
			seconds: 0,
		}),
});
