import { scaleLinear } from 'd3-scale';
import type { Assessment } from '../../audit/assess.ts';
import { drawing, label, round, rule, sheet } from './draw.ts';

/** The limits as bars, lowest first, the target marked. Null when nothing could be placed. */
export function drawLadder({ audit, wording, state }: Assessment): string | null {
	const rungs = audit.limits.filter(({ value }) => value !== null);
	if (rungs.length === 0) return null;
	const show = (value: number) => wording.show(rungs[0]!.limit, value)!;
	const varied = rungs[0]!.unit === 'Pa' ? 'boost.target' : 'engine.peak_rpm';
	const target = state.values[state.graph.slotOf.get(varied)!];
	const most = Math.max(...rungs.map(({ value, high }) => high ?? value!), typeof target === 'number' ? target : 0);
	const x = scaleLinear([0, most * 1.05], [sheet.left + 40, sheet.width - sheet.right - 60]);
	const height = sheet.top + rungs.length * sheet.line + 34;
	const bars = rungs.flatMap(({ title, value, low, high, bound }, index) => {
		const y = sheet.top + index * sheet.line + 6;
		const end = x(value!);
		return [
			label(sheet.left + 32, y + 14, title, { anchor: 'end' }),
			`<rect x="${round(x(0))}" y="${y}" width="${round(end - x(0))}" height="18" fill="${bound === 'above' ? '#ddd' : '#8a8a8a'}" stroke="#111"/>`,
			...(low !== null && high !== null
				? [
						rule(x(low), y + 9, x(high), y + 9),
						rule(x(low), y + 4, x(low), y + 14),
						rule(x(high), y + 4, x(high), y + 14),
					]
				: []),
			label(
				Math.max(end, high === null ? 0 : x(high)) + 6,
				y + 14,
				bound === 'above' ? `over ${show(value!)}` : show(value!),
			),
		];
	});
	const bottom = height - 30;
	const mark =
		typeof target === 'number'
			? [
					rule(x(target), sheet.top, x(target), bottom, '#111', '6 4'),
					label(x(target), bottom + 18, `now ${show(target)}`, { anchor: 'middle' }),
				]
			: [];
	const told = rungs
		.map(({ title, value, bound }) => `${title} ${bound === 'above' ? 'over ' : ''}${show(value!)}`)
		.join(', ');
	return drawing('What gives out first', `${told}.`, height, [...bars, ...mark]);
}
