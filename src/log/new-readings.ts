import type { Series } from './series.ts';
import { percentile } from './statistics.ts';

/**
 * Loggers that ask one channel after another write the old value until its turn comes. A cell is a new reading when it
 * differs from the last one, when it comes after an empty one, or when its turn is due.
 */
export class NewReadings {
	private last = Number.NaN;
	private since = 0;
	private afterEmpty = true;
	private readonly due: number;

	/** `turn`: cells from one turn to the next, see `turns`. */
	constructor(turn: number) {
		// A turn comes a cell early or late; a repeated value waits until it is surely over.
		this.due = turn <= 1 ? 1 : turn + Math.max(1, Math.round(0.2 * turn));
	}

	/** Takes a column of cells at their times; those that are new readings go into the series. */
	takeAll(time: Float64Array, cells: Float64Array, series: Pick<Series, 'push' | 'pushAll'>): void {
		let { last, since, afterEmpty } = this;
		if (this.due === 1 && isFull(cells)) {
			series.pushAll(time, cells);
			this.last = cells.at(-1) ?? last;
			this.since = 0;
			this.afterEmpty = cells.length === 0 && afterEmpty;
			return;
		}
		for (let row = 0; row < cells.length; row++) {
			const cell = cells[row]!;
			if (Number.isNaN(cell)) {
				afterEmpty = true;
				continue;
			}
			if (++since >= this.due || cell !== last || afterEmpty) {
				series.push(time[row]!, cell);
				last = cell;
				since = 0;
			}
			afterEmpty = false;
		}
		this.last = last;
		this.since = since;
		this.afterEmpty = afterEmpty;
	}
}

function isFull(cells: Float64Array): boolean {
	for (let row = 0; row < cells.length; row++) if (Number.isNaN(cells[row])) return false;
	return true;
}

/** Changes a channel needs to show its own turn; the share of its gaps that must be whole turns, and how nearly. */
const enough = 8;
const regular = 0.7;
const nearly = 0.1;

/**
 * Cells from one turn to the next for each channel, from the first rows of a table. A channel whose changes come at whole
 * multiples of their shortest gap shows its turn; one that changes when it likes (a coolant temperature in whole degrees)
 * has that of engine speed.
 */
export function turns(cells: ReadonlyMap<string, Float64Array>, leader = 'engine_speed'): Map<string, number> {
	const own = new Map<string, number>();
	for (const [id, column] of cells) {
		const gaps = gapsOf(column);
		const short = Math.max(1, Math.round(percentile(gaps, 0.1)));
		const even = gaps.filter(gap => Math.abs(gap - short * Math.round(gap / short)) <= Math.max(1, nearly * short));
		if (gaps.length >= enough && even.length >= regular * gaps.length) own.set(id, short);
	}
	const common = own.get(leader) ?? Math.min(...own.values(), Number.POSITIVE_INFINITY);
	const usual = Number.isFinite(common) ? common : 1;
	return new Map([...cells.keys()].map(id => [id, own.get(id) ?? usual]));
}

/** Cells between one change and the next, empty cells left out. */
function gapsOf(column: Float64Array): number[] {
	const gaps: number[] = [];
	let [last, since, first] = [Number.NaN, 0, true];
	for (let row = 0; row < column.length; row++) {
		const cell = column[row]!;
		if (Number.isNaN(cell)) continue;
		since++;
		if (cell === last) continue;
		// The first change may be the end of a gap that began before the table.
		if (!Number.isNaN(last) && !first) gaps.push(since);
		else if (!Number.isNaN(last)) first = false;
		last = cell;
		since = 0;
	}
	return gaps;
}
