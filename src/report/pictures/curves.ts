import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { color, drawing, edged, label, type Picture, round, rule } from './draw.ts';

type Point = readonly [x: number, y: number];

/** A place on an axis that stands out, with its words. */
export interface Mark {
	readonly at: number;
	readonly title: string;
}

/** A level that a curve should keep under, or over. */
export interface Level extends Mark {
	readonly wrong?: 'above' | 'below';
}

/** A curve of a picture. */
export interface Series {
	readonly title: string;
	readonly points: readonly Point[];
	/** Writes a value of this series. */
	readonly show: (value: number) => string;
	/** A level that matters to this series. */
	readonly level?: Level;
	/** Where it is expected: low and high at rising x, drawn behind the curve. */
	readonly band?: readonly (readonly [x: number, low: number, high: number])[];
}

interface Axis {
	readonly title: string;
	readonly show: (x: number) => string;
	readonly mark: Mark | null;
}

const frame = { left: 64, right: 600, top: 44, height: 150, gap: 34 } as const;

/** Series over a common x, each in a strip of its own, since their units differ. */
export function strips(title: string, description: string, axis: Axis, series: readonly Series[]): Picture {
	const xs = series.flatMap(({ points }) => points.map(([at]) => at));
	const x = scaleLinear([Math.min(...xs), Math.max(...xs)], [frame.left, frame.right]);
	const top = (index: number) => frame.top + index * (frame.height + frame.gap) + 18;
	const bottom = top(series.length) - 18 - frame.gap;
	const { mark } = axis;
	const limited = series.some(({ level }) => level?.wrong);
	return drawing(title, description, bottom + (limited ? 60 : 44), [
		...series.flatMap((one, index) => strip(one, x, top(index), mark)),
		...x
			.ticks(6)
			.flatMap(at => [
				rule(x(at), bottom, x(at), bottom + 4),
				label(x(at), bottom + 16, axis.show(at), { anchor: 'middle', size: 11 }),
			]),
		...(limited ? [label(frame.left, bottom + 52, 'Heavy, orange: past the dotted limit.', { size: 11 })] : []),
		label((frame.left + frame.right) / 2, bottom + 34, axis.title, { anchor: 'middle' }),
		// Above the first strip, right of its title, where no curve runs.
		...(mark
			? [label(Math.min(570, Math.max(250, x(mark.at))), top(0) - 6, mark.title, { anchor: 'middle', size: 11 })]
			: []),
	]);
}

function strip(
	{ title, points, show, level, band = [] }: Series,
	x: ScaleLinear<number, number>,
	top: number,
	mark: Mark | null,
): string[] {
	const bottom = top - 18 + frame.height;
	const ys = [
		...points.map(([, y]) => y),
		...(level ? [level.at] : []),
		...band.flatMap(([, low, high]) => [low, high]),
	];
	const spread = Math.max(...ys) - Math.min(...ys) || 1;
	const y = scaleLinear([Math.min(...ys) - spread * 0.05, Math.max(...ys) + spread * 0.05], [bottom, top]);
	const draw = line<Point>()
		.x(([at]) => round(x(at)))
		.y(([, at]) => round(y(at)));
	const path = (along: readonly Point[], stroke: string, width: number) =>
		`<path d="${draw([...along])}" fill="none" stroke="${stroke}" stroke-width="${width}"/>`;
	return [
		label(frame.left, top - 6, title, { weight: 'bold' }),
		...(band.length > 1 ? [`<path d="${outline(band, x, y)}" fill="${color.spare}"/>`] : []),
		rule(frame.left, bottom, frame.right, bottom),
		rule(frame.left, top, frame.left, bottom),
		...y
			.ticks(3)
			.flatMap(at => [
				rule(frame.left - 4, y(at), frame.left, y(at)),
				label(frame.left - 7, y(at) + 4, show(at), { anchor: 'end', size: 11 }),
			]),
		...(level ? [rule(frame.left, y(level.at), frame.right, y(level.at), color.soft, '2 3')] : []),
		...(mark ? [edged(x(mark.at), top, x(mark.at), bottom, '6 4')] : []),
		path(points, color.fill, 2),
		...(level?.wrong ? runsOver(points, level).map(run => path(run, color.over, 4)) : []),
		...(level ? [levelLabel(level, points, y(level.at), top)] : []),
	];
}

/** The runs of a curve on the wrong side of a level, from where it crosses. */
function runsOver(points: readonly Point[], { at, wrong }: Level): Point[][] {
	const isOver = ([, y]: Point) => (wrong === 'above' ? y > at : y < at);
	const runs: Point[][] = [];
	points.forEach((point, index) => {
		const before = points[index - 1];
		if (before && isOver(before) !== isOver(point)) {
			const share = (at - before[1]) / (point[1] - before[1]);
			const crossing: Point = [before[0] + (point[0] - before[0]) * share, at];
			if (isOver(point)) runs.push([crossing]);
			else runs.at(-1)!.push(crossing);
		} else if (isOver(point) && !before) runs.push([]);
		if (isOver(point)) runs.at(-1)!.push(point);
	});
	return runs;
}

/** There along the low ends, back along the high ones. */
function outline(
	band: NonNullable<Series['band']>,
	x: ScaleLinear<number, number>,
	y: ScaleLinear<number, number>,
): string {
	const [low, high] = [1, 2].map(end => band.map(point => `${round(x(point[0]))},${round(y(point[end]!))}`));
	return `M${[...low!, ...high!.reverse()].join('L')}Z`;
}

/** The words of a level, at the end where the curve is further from it. */
function levelLabel({ at, title }: Mark, points: readonly Point[], level: number, top: number): string {
	// Over its line, but not into the title of the strip.
	const y = level - top < 14 ? level + 13 : level - 4;
	const third = Math.ceil(points.length / 3);
	const nearest = (part: readonly Point[]) => Math.min(...part.map(([, value]) => Math.abs(value - at)));
	return nearest(points.slice(0, third)) > nearest(points.slice(-third))
		? label(frame.left + 6, y, title, { size: 11 })
		: label(frame.right, y, title, { anchor: 'end', size: 11 });
}
