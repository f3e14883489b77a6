import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { LogReport } from '../../audit/log-report.ts';
import type { Figure } from '../document.ts';
import { drawing, label, round, rule } from '../pictures/draw.ts';

const shade = {
	'key-on': '#fff',
	crank: '#ccc',
	idle: '#e8e8e8',
	cruise: '#f4f4f4',
	overrun: '#fff',
	pull: '#bbb',
} as const;
const frame = { left: 64, right: 600, top: 50, bottom: 170 } as const;

/** Engine speed over the whole log, with what the engine did; null without engine speed. */
export function drawOverview({ overview, json }: LogReport): Figure | null {
	if (overview.length < 2) return null;
	const minutes = (seconds: number) => seconds / 60;
	const x = scaleLinear([0, minutes(json.file.seconds) || 1], [frame.left, frame.right]);
	const y = scaleLinear([0, Math.max(...overview.map(([, speed]) => speed)) || 1], [frame.bottom, frame.top]);
	const path = line<readonly [number, number]>()
		.x(([at]) => round(x(minutes(at))))
		.y(([, speed]) => round(y(speed)))([...overview]);
	const episodeCounts = (['crank', 'idle', 'cruise', 'pull'] as const).map(kind => {
		const count = json.episodes.filter(episode => episode.kind === kind).length;
		return `${count} of ${kind}`;
	});
	const words = `Engine speed over ${Math.round(minutes(json.file.seconds))} minutes: ${episodeCounts.join(', ')}.`;
	const { svg, title } = drawing('The whole log', words, frame.bottom + 50, [
		...json.episodes.map(
			({ kind, from, to }) =>
				`<rect x="${round(x(minutes(from)))}" y="${frame.top}" width="${round(Math.max(1, x(minutes(to)) - x(minutes(from))))}" height="${frame.bottom - frame.top}" fill="${shade[kind]}"/>`,
		),
		...json.episodes
			.filter(({ kind }) => kind === 'pull')
			.map(({ from, number }) =>
				label(x(minutes(from)), frame.top - 4, String(number), { anchor: 'middle', size: 11 }),
			),
		rule(frame.left, frame.bottom, frame.right, frame.bottom),
		rule(frame.left, frame.top, frame.left, frame.bottom),
		...y.ticks(3).map(at => label(frame.left - 7, y(at) + 4, `${at}`, { anchor: 'end', size: 11 })),
		...x.ticks(6).map(at => label(x(at), frame.bottom + 16, `${at}`, { anchor: 'middle', size: 11 })),
		label((frame.left + frame.right) / 2, frame.bottom + 34, 'minutes; darkest: pulls, then cranking, idle, cruise', {
			anchor: 'middle',
		}),
		`<path d="${path}" fill="none" stroke="#111" stroke-width="1"/>`,
	]);
	return { is: 'figure', name: 'overview', title, svg };
}
