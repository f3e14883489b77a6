import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { drawing, label, round, rule } from './draw.ts';

export interface Series {
	readonly title: string;
	readonly dash: string;
	readonly points: readonly (readonly [number, number])[];
	/** Writes a value of this series. */
	readonly show: (value: number) => string;
}

const frame = { left: 64, right: 600, top: 44, height: 150, gap: 34 } as const;

/**
 * Series over a common x, each in a strip of its own, since their units differ. `mark` is an x to stand out, and each
 * strip may have a level of its own.
 */
export function strips(
	title: string,
	description: string,
	xTitle: string,
	showX: (x: number) => string,
	series: readonly (Series & { readonly level?: { readonly at: number; readonly title: string } })[],
	mark: { readonly at: number; readonly title: string } | null,
): string {
	const xs = series.flatMap(({ points }) => points.map(([at]) => at));
	const x = scaleLinear([Math.min(...xs), Math.max(...xs)], [frame.left, frame.right]);
	const strip = (index: number) => frame.top + index * (frame.height + frame.gap);
	const inside = series.flatMap(({ title: name, dash, points, show, level }, index) => {
		const top = strip(index) + 18;
		const bottom = strip(index) + frame.height;
		const ys = [...points.map(([, y]) => y), ...(level ? [level.at] : [])];
		const spread = Math.max(...ys) - Math.min(...ys) || 1;
		const y = scaleLinear([Math.min(...ys) - spread * 0.05, Math.max(...ys) + spread * 0.05], [bottom, top]);
		const path = line<readonly [number, number]>()
			.x(([at]) => round(x(at)))
			.y(([, at]) => round(y(at)))(points);
		return [
			label(frame.left, top - 6, name, { weight: 'bold' }),
			rule(frame.left, bottom, frame.right, bottom),
			rule(frame.left, top, frame.left, bottom),
			...y
				.ticks(3)
				.flatMap(at => [
					rule(frame.left - 4, y(at), frame.left, y(at)),
					label(frame.left - 7, y(at) + 4, show(at), { anchor: 'end', size: 11 }),
				]),
			`<path d="${path}" fill="none" stroke="#111" stroke-width="2"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`,
			...(level
				? [
						rule(frame.left, y(level.at), frame.right, y(level.at), '#777', '2 3'),
						label(frame.right, y(level.at) - 4, level.title, { anchor: 'end', size: 11 }),
					]
				: []),
			...(mark ? [rule(x(mark.at), top, x(mark.at), bottom, '#111', '6 4')] : []),
		];
	});
	const bottom = strip(series.length) - frame.gap;
	const axis = [
		...x.ticks(6).map(at => label(x(at), bottom + 16, showX(at), { anchor: 'middle', size: 11 })),
		label((frame.left + frame.right) / 2, bottom + 34, xTitle, { anchor: 'middle' }),
		...(mark ? [label(x(mark.at) + 4, frame.top + 30, mark.title, { size: 11 })] : []),
	];
	return drawing(title, description, bottom + 44, [...inside, ...axis]);
}
