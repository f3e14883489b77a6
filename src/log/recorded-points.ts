import type { RecordedPull, RecordedReading } from '../sheet/sheet.ts';
import type { PullPoint, PullPoints } from './points.ts';

/** Points of a pull that a sheet keeps at most. */
const maxPoints = 12;

/** What is kept of the pulls in a sheet: the part that counts, neighboring bins joined until few are left. */
export const recordedPoints = (pulls: readonly PullPoints[]): RecordedPull[] =>
	pulls.map(({ pull, gear, points: all }) => {
		const points = all.filter(({ full }) => full);
		const perPoint = Math.ceil(points.length / maxPoints);
		const groups = Array.from({ length: Math.ceil(points.length / perPoint) || 0 }, (_, at) =>
			points.slice(at * perPoint, (at + 1) * perPoint),
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
