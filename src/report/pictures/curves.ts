import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { drawing, label, type Picture, round, rule } from './draw.ts';

type Point = readonly [x: number, y: number];

/** A place on an axis that stands out, with its words. */
export interface Mark {
	readonly at: number;
	readonly title: string;
}

export interface Series {
	readonly title: string;
	readonly dash: string;
	readonly points: readonly Point[];
	/** Writes a value of this series. */
	readonly show: (value: number) => string;
	/** A level that matters to this series. */
	readonly level?: Mark;
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
	return drawing(title, description, bottom + 44, [
		...series.flatMap((one, index) => strip(one, x, top(index), mark)),
		...x.ticks(6).map(at => label(x(at), bottom + 16, axis.show(at), { anchor: 'middle', size: 11 })),
		label((frame.left + frame.right) / 2, bottom + 34, axis.title, { anchor: 'middle' }),
		// Above the first strip, right of its title, where no curve runs.
		...(mark
			? [label(Math.min(570, Math.max(250, x(mark.at))), top(0) - 6, mark.title, { anchor: 'middle', size: 11 })]
			: []),
	]);
}

function strip(
	{ title, dash, points, show, level }: Series,
	x: ScaleLinear<number, number>,
	top: number,
	mark: Mark | null,
): string[] {
	const bottom = top - 18 + frame.height;
	const ys = [...points.map(([, y]) => y), ...(level ? [level.at] : [])];
	const spread = Math.max(...ys) - Math.min(...ys) || 1;
	const y = scaleLinear([Math.min(...ys) - spread * 0.05, Math.max(...ys) + spread * 0.05], [bottom, top]);
	const path = line<Point>()
		.x(([at]) => round(x(at)))
		.y(([, at]) => round(y(at)))(points);
	return [
		label(frame.left, top - 6, title, { weight: 'bold' }),
		rule(frame.left, bottom, frame.right, bottom),
		rule(frame.left, top, frame.left, bottom),
		...y
			.ticks(3)
			.flatMap(at => [
				rule(frame.left - 4, y(at), frame.left, y(at)),
				label(frame.left - 7, y(at) + 4, show(at), { anchor: 'end', size: 11 }),
			]),
		...(level ? [rule(frame.left, y(level.at), frame.right, y(level.at), '#777', '2 3')] : []),
		...(mark ? [rule(x(mark.at), top, x(mark.at), bottom, '#111', '6 4')] : []),
		`<path d="${path}" fill="none" stroke="#111" stroke-width="2"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`,
		...(level ? [levelLabel(level, points, y(level.at))] : []),
	];
}

/** The words of a level, at the end where the curve is further from it. */
function levelLabel({ at, title }: Mark, points: readonly Point[], y: number): string {
	const third = Math.ceil(points.length / 3);
	const nearest = (part: readonly Point[]) => Math.min(...part.map(([, value]) => Math.abs(value - at)));
	return nearest(points.slice(0, third)) > nearest(points.slice(-third))
		? label(frame.left + 6, y - 4, title, { size: 11 })
		: label(frame.right, y - 4, title, { anchor: 'end', size: 11 });
}
