import type { RecordedPull, RecordedReading } from '../sheet/sheet.ts';
import type { PullPoint, PullPoints } from './points.ts';

/** So many points of a pull are kept in a sheet. */
const mostPoints = 12;

/** What is kept of the pulls in a sheet: the part that counts, neighboring bins joined until few are left. */
export const recordedPoints = (pulls: readonly PullPoints[]): RecordedPull[] =>
	pulls.map(({ pull, gear, points: all }) => {
		const points = all.filter(({ full }) => full);
		const together = Math.ceil(points.length / mostPoints);
		const groups = Array.from({ length: Math.ceil(points.length / together) || 0 }, (_, at) =>
			points.slice(at * together, (at + 1) * together),
		);
		return { pull, gear, points: groups.map(joinedPoint) };
	});

function joinedPoint(bins: readonly PullPoint[]): RecordedPull['points'][number] {
	const channels = [...new Set(bins.flatMap(({ channels }) => Object.keys(channels)))];
	return {
		speed: short(mean(bins.map(({ speed }) => speed))),
		time: short(mean(bins.map(({ time }) => time))),
		channels: Object.fromEntries(
			channels.map(id => [id, joinedReading(bins.flatMap(({ channels }) => channels[id] ?? []))]),
		),
	};
}

/** Bins over engine speed as one: their mean, for each stands for as much of the pull. */
const joinedReading = (bins: readonly PullPoint['channels'][string][]): RecordedReading => [
	short(mean(bins.map(({ value }) => value))),
	short(mean(bins.map(({ noise }) => noise))),
	bins.reduce((sum, { count }) => sum + count, 0),
];

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Six digits: more than any logger has. */
export const short = (value: number): number => Number(value.toPrecision(6));
