import { expect, test } from 'vitest';
import { resultsOf } from '../../src/log/results.ts';
import { counts, seed } from '../counts.ts';
import { analyzed } from '../support/analyzed.ts';
import { chance } from '../support/chance.ts';
import { recorded } from '../support/recorded.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

/** How each channel is written: header, and the cell's number of a kept one, in the two sets of units. */
const written: Readonly<
	Record<string, readonly (readonly [header: string, unit: string, of: (kept: number) => number])[]>
> = {
	engine_speed: [
		['RPM', 'rpm', kept => kept],
		['Engine speed', 'rev/min', kept => kept],
	],
	manifold_pressure: [
		['MAP', 'kPa', kept => kept / 1000],
		['Manifold absolute pressure', 'psi', kept => kept / 6894.757293168],
	],
	coolant_temp: [
		['ECT', '°C', kept => kept - 273.15],
		['Coolant temperature', 'degF', kept => (kept - 273.15) * 1.8 + 32],
	],
	lambda_1: [
		['Lambda', 'lambda', kept => kept],
		['Wideband AFR', 'AFR', kept => kept * 14.7],
	],
	throttle: [
		['TPS', '%', kept => kept * 100],
		['Throttle position', '%', kept => kept * 100],
	],
	battery_volts: [
		['Battery voltage', 'V', kept => kept],
		['VPWR', 'mV', kept => kept * 1000],
	],
};

const drive = simulateDrive({ seed, rate: 10, pulls: 1 });
const rows = Array.from(drive.time.keys());
const ids = Object.keys(written).filter(id => drive.channels.has(id));

/** The drive as a table, laid out by choices that chance makes. */
function table(random: () => number): { bytes: Uint8Array; described: string } {
	const one = <T>(...list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
	const decimal = one('.', ',');
	const delimiter = decimal === ',' ? one(';', '\t', '|') : one(',', ';', '\t', '|');
	const [end, quotes, units, long] = [
		one('\n', '\r\n', '\r'),
		random() < 0.2,
		one('[]', '()', 'line', ','),
		random() < 0.25,
	];
	const clock = one('s', 'ms', 'clock', 'ISO');
	const encoding = one('utf8', 'utf8 marked', 'utf16', 'latin1');
	const ways = new Map(ids.map(id => [id, one(...written[id]!)]));
	const order = [...ids].sort(() => random() - 0.5);
	const sign = (text: string) => text.replace('.', decimal);
	const cell = (text: string) => (quotes || text.includes(delimiter) ? `"${text}"` : text);
	const time = (row: number): string => {
		const seconds = drive.time[row]! + 3600;
		if (clock === 's') return sign(seconds.toFixed(3));
		if (clock === 'ms') return (seconds * 1000).toFixed(0);
		const iso = new Date(Math.round(seconds * 1000)).toISOString();
		return clock === 'ISO' ? iso : iso.slice(11, 23);
	};
	const value = (id: string, row: number): string => {
		const kept = drive.channels.get(id)![row]!;
		return Number.isNaN(kept) ? '' : sign(ways.get(id)![2](kept).toFixed(9));
	};
	const unitOf = (id: string) =>
		id === 'time' ? (clock === 'ms' ? 'ms' : clock === 's' ? 's' : '') : ways.get(id)![1];
	const header = (id: string): string => {
		const name = id === 'time' ? 'Time' : ways.get(id)![0];
		const unit = unitOf(id);
		if (unit === '' || units === 'line' || long) return name;
		return units === ',' ? `${name}, ${unit}` : `${name} ${units[0]}${unit}${units[1]}`;
	};
	const columns = ['time', ...order];
	const lines = long
		? [
				['Time', 'Name', 'Value', 'Unit'],
				...rows.flatMap(row =>
					order.flatMap(id => (value(id, row) === '' ? [] : [[time(row), header(id), value(id, row), unitOf(id)]])),
				),
			]
		: [
				columns.map(header),
				...(units === 'line' ? [columns.map(unitOf)] : []),
				...rows.map(row => [time(row), ...order.map(id => value(id, row))]),
			];
	// A long table of clocks has no unit of time; in ms it is recognized by its steps.
	const text = lines.map(cells => cells.map(cell).join(delimiter)).join(end);
	const described = [delimiter, decimal, JSON.stringify(end), quotes, units, long, clock, encoding].join(' ');
	const utf16 = () => new Uint8Array(Uint16Array.from(`\uFEFF${text}`, letter => letter.charCodeAt(0)).buffer);
	const bytes =
		encoding === 'utf16'
			? utf16()
			: encoding === 'latin1'
				? Uint8Array.from(text, letter => letter.charCodeAt(0))
				: new TextEncoder().encode(encoding === 'utf8' ? text : `\uFEFF${text}`);
	return { bytes, described };
}

const numbersOf = (log: Parameters<typeof analyzed>[0]) => resultsOf(analyzed(log));

/** All numbers of a quantity, lists taken apart; what is not known is -1. Bands rest on the steps of the unit it was logged in. */
const values = (quantity: ReturnType<typeof numbersOf>[string]): number[] =>
	[quantity]
		.flat()
		.flatMap(({ value }) =>
			[value].flat(3).map(one => (typeof one === 'number' ? one : one === true ? 1 : one === null ? -1 : 0)),
		);

test('the same drive in many layouts gives the same quantities within rounding', async () => {
	// As a logger rounds it: what counts as a new reading is what differs in the file.
	const expected = numbersOf({
		time: drive.time.map(at => Number((at - drive.time[0]!).toFixed(3))),
		channels: new Map(ids.map(id => [id, drive.channels.get(id)!])),
	});
	expect(Object.keys(expected).length).toBeGreaterThan(30);
	const random = chance(seed);
	for (let layout = 0; layout < counts.layouts; layout++) {
		const { bytes, described } = table(random);
		const read = await recorded(bytes);
		expect(Object.keys(read.readings).sort(), described).toEqual([...ids].sort());
		expect(read.totals.unread, described).toBe(0);
		const channels = new Map(Object.entries(read.readings).map(([id, values]) => [id, Float64Array.from(values)]));
		const found = numbersOf({ time: Float64Array.from(read.time), channels });
		for (const [id, quantity] of Object.entries(expected)) {
			const [before, now] = [values(quantity), values(found[id]!)];
			expect(now.length, `${id}: ${described}`).toBe(before.length);
			for (const [at, value] of before.entries()) {
				expect(Math.abs(now[at]! - value), `${id} ${now[at]} for ${value}: ${described}`).toBeLessThanOrEqual(
					0.002 * Math.abs(value) + 1e-6,
				);
			}
		}
	}
});
