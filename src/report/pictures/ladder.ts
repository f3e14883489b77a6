import { scaleLinear } from 'd3-scale';
import type { Assessment } from '../../audit/assess.ts';
import { drawing, label, type Picture, round, rule, sheet } from './draw.ts';

/** The limits as bars, lowest first, the target marked. Null when nothing could be placed. */
export function drawLadder({ audit, wording, state }: Assessment): Picture | null {
	const rungs = audit.limits.filter(({ value }) => value !== null);
	if (rungs.length === 0) return null;
	const show = (value: number) => wording.show(rungs[0]!.limit, value)!;
	const varied = rungs[0]!.unit === 'Pa' ? 'boost.target' : 'engine.peak_rpm';
	const target = state.values[state.graph.slotOf.get(varied)!];
	const most = Math.max(...rungs.map(({ value, high }) => high ?? value!), typeof target === 'number' ? target : 0);
	const x = scaleLinear([0, most * 1.05], [sheet.left, sheet.width - sheet.right]);
	const height = sheet.top + rungs.length * sheet.line + 34;
	const row = (index: number) => sheet.top + index * sheet.line + 20;
	const bars = rungs.flatMap(({ value, low, high, bound }, index) => {
		const y = row(index);
		const whisker = (at: number) => rule(x(at), y + 3, x(at), y + 11);
		return [
			`<rect x="${round(x(0))}" y="${y}" width="${round(x(value!) - x(0))}" height="14" fill="${bound === 'above' ? '#ddd' : '#aaa'}" stroke="#111"/>`,
			...(low !== null && high !== null && low < high
				? [rule(x(low), y + 7, x(high), y + 7), whisker(low), whisker(high)]
				: []),
		];
	});
	const names = rungs.map(({ title, value, bound }) => `${title}: ${bound === 'above' ? 'over ' : ''}${show(value!)}`);
	const mark =
		typeof target === 'number' ? `${varied === 'boost.target' ? 'target' : 'best power'} ${show(target)}` : null;
	return drawing('What gives out first', `${names.join(', ')}.${mark ? ` Dashed: ${mark}.` : ''}`, height, [
		...bars,
		...(mark === null || typeof target !== 'number'
			? []
			: [
					rule(x(target), sheet.top, x(target), height - 26, '#111', '6 4'),
					label(Math.min(Math.max(x(target), 80), sheet.width - 80), height - 12, mark, { anchor: 'middle' }),
				]),
		...names.map((name, index) => label(sheet.left, row(index) - 4, name)),
	]);
}
