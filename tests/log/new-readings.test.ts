import { describe, expect, test } from 'vitest';
import { NewReadings, turns } from '../../src/log/new-readings.ts';
import { Series } from '../../src/log/series.ts';

const none = Number.NaN;

/** The readings that are new among some cells, one a second, by time; `parts`: how many cells come at once. */
function taken(turn: number, cells: readonly number[], parts = cells.length): (readonly [number, number])[] {
	const [readings, series] = [new NewReadings(turn), new Series()];
	for (let from = 0; from < cells.length; from += parts) {
		const some = Float64Array.from(cells.slice(from, from + parts));
		readings.takeAll(
			some.map((_, at) => from + at),
			some,
			series,
		);
	}
	const { time, value } = series.all;
	return Array.from(time, (at, index) => [at, value[index]!]);
}
const times = (...all: Parameters<typeof taken>) => taken(...all).map(([time]) => time);

describe('a cell is a new reading', () => {
	test('at every row where a channel has its turn in each', () => {
		expect(taken(1, [5, 5, 6])).toEqual([
			[0, 5],
			[1, 5],
			[2, 6],
		]);
	});

	test('when it differs, comes after an empty one, or its turn is surely over', () => {
		expect(times(4, [5, 5, 5, 5, 6, 6, 6, 6, 7])).toEqual([0, 4, 8]);
		expect(times(4, [5, none, 5, none, none, 5])).toEqual([0, 2, 5]);
		// A turn of 4 may come a cell late: a value that stays is read once more at the fifth.
		expect(times(4, [5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5])).toEqual([0, 5, 10]);
		// One of 10 comes two late: at the twelfth.
		expect(times(10, new Array(25).fill(5))).toEqual([0, 12, 24]);
	});

	test('the same whether cells come all at once or a few at a time', () => {
		const cells = [none, 5, 5, 5, 5, 5, none, 5, 6, 6, 6, 6, 6, 6, none, none, 7];
		for (const turn of [1, 2, 4]) {
			const whole = taken(turn, cells);
			for (const parts of [1, 2, 3, 5]) expect(taken(turn, cells, parts), `${turn} ${parts}`).toEqual(whole);
		}
	});

	test('where a column is full for a while and then has gaps as well', () => {
		expect(times(1, [5, 5, 5, none, 5, 5], 3)).toEqual([0, 1, 2, 4, 5]);
		expect(times(1, [none, none, 5, 5], 2)).toEqual([2, 3]);
	});
});

describe('how many cells lie between two turns', () => {
	/** A column whose value changes at each multiple of `every`. */
	const steps = (every: number, rows: number, late = (_: number) => 0) => {
		const column = new Float64Array(rows);
		let value = 0;
		for (let row = 0, turn = 1; row < rows; row++) {
			if (row === turn * every + late(turn)) {
				value++;
				turn++;
			}
			column[row] = value;
		}
		return column;
	};
	const of = (columns: Readonly<Record<string, Float64Array>>) =>
		Object.fromEntries(turns(new Map(Object.entries(columns))));

	test('is the shortest gap of its changes, where the others are whole multiples of it', () => {
		expect(of({ engine_speed: steps(5, 200) })).toEqual({ engine_speed: 5 });
		// Two turns in a row may show the same value.
		const skipping = steps(5, 400).map(value => value - (value % 7 === 3 ? 1 : 0));
		expect(of({ engine_speed: skipping })).toEqual({ engine_speed: 5 });
		const halting = steps(5, 400).map(value => 2 * Math.floor(value / 3) + Number(value % 3 > 0));
		expect(of({ engine_speed: halting })).toEqual({ engine_speed: 5 });
		// Some may come a cell late.
		expect(of({ engine_speed: steps(10, 400, turn => Number(turn % 5 === 0)) })).toEqual({ engine_speed: 9 });
		expect(of({ engine_speed: steps(40, 2000, turn => (turn % 5 === 0 ? 3 : 0)) })).toEqual({ engine_speed: 37 });
	});

	test('is that of engine speed for a channel that changes when it likes, or too seldom to tell', () => {
		const irregular = steps(20, 2000, turn => (turn * 7) % 19);
		const seldom = steps(150, 1000);
		expect(of({ engine_speed: steps(4, 2000), coolant_temp: irregular, fuel: seldom })).toEqual({
			engine_speed: 4,
			coolant_temp: 4,
			fuel: 4,
		});
	});

	test('is that of engine speed also where another channel has its turn sooner', () => {
		const columns = { quick: steps(3, 400), engine_speed: steps(8, 400), seldom: steps(150, 400) };
		expect(of(columns)).toEqual({ quick: 3, engine_speed: 8, seldom: 8 });
	});

	test('without one of engine speed is the shortest that any channel shows, else each row', () => {
		expect(of({ a: steps(6, 300), b: steps(3, 300), c: new Float64Array(300) })).toEqual({ a: 6, b: 3, c: 3 });
		expect(of({ c: new Float64Array(300) })).toEqual({ c: 1 });
		expect(of({})).toEqual({});
	});

	test('counts cells, not rows: empty ones are left out', () => {
		const full = steps(4, 400);
		const half = new Float64Array(800).fill(none);
		for (const [row, value] of full.entries()) half[2 * row] = value;
		expect(of({ engine_speed: half })).toEqual({ engine_speed: 4 });
	});

	test('needs eight gaps, the first left out: it may have begun before the table', () => {
		expect(of({ a: steps(5, 5 * 9 + 1) })).toEqual({ a: 5 });
		expect(of({ a: steps(5, 5 * 9) })).toEqual({ a: 1 });
	});
});
