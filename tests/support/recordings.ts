import { existsSync, readFileSync } from 'node:fs';

/** Where the four recordings of an open data set lie, if they are here; nothing of them is in the project. */
const folder = process.env.SWAP_AUDIT_RECORDINGS ?? new URL('../../../shared/checks/logs', import.meta.url).pathname;

/** Channel, and from the file's unit to the kept one, by place in the row. */
const columns: readonly (readonly [string, (value: number) => number])[] = [
	['coolant_temp', celsius],
	['manifold_pressure', value => value * 1000],
	['engine_speed', value => value],
	['road_speed', value => value / 3.6],
	['charge_temp', celsius],
	['air_flow', value => value / 1000],
	['throttle', value => value / 100],
	['ambient_temp', celsius],
	['pedal', value => value / 100],
];

function celsius(value: number): number {
	return value + 273.15;
}

export const recordingsAreHere = existsSync(`${folder}/drive-1.csv`);

/** One of them as it lies there. */
export const recordingBytes = (number: number): Uint8Array => readFileSync(`${folder}/drive-${number}.csv`);

/** One of the recordings, 1 to 4: read plainly, without the program's own reader. */
export function recording(number: number) {
	const rows = readFileSync(`${folder}/drive-${number}.csv`, 'utf8')
		.trim()
		.split(/\r?\n/)
		.slice(1)
		.map(line => line.split(','));
	const time = Float64Array.from(rows, ([clock]) => {
		const [hours, minutes, seconds] = clock!.split(':').map(Number);
		return hours! * 3600 + minutes! * 60 + seconds!;
	});
	const channels = new Map(
		columns.map(([id, kept], place) => [
			id,
			Float64Array.from(rows, row => (row[place + 1] ? kept(Number(row[place + 1])) : Number.NaN)),
		]),
	);
	return { time, channels };
}
