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
	const x = scaleLinear([0, most * 1.05], [sheet.left, sheet.width - sheet.right]);
	const height = sheet.top + rungs.length * sheet.line + 34;
	const bars = rungs.flatMap(({ title, value, low, high, bound }, index) => {
		const y = sheet.top + index * sheet.line + 20;
		const end = x(value!);
		return [
			label(sheet.left, y - 4, `${title}: ${bound === 'above' ? 'over ' : ''}${show(value!)}`),
			`<rect x="${round(x(0))}" y="${y}" width="${round(end - x(0))}" height="14" fill="${bound === 'above' ? '#ddd' : '#8a8a8a'}" stroke="#111"/>`,
			...(low !== null && high !== null
				? [
						rule(x(low), y + 7, x(high), y + 7),
						rule(x(low), y + 3, x(low), y + 11),
						rule(x(high), y + 3, x(high), y + 11),
					]
				: []),
		];
	});
	const bottom = height - 30;
	const mark =
		typeof target === 'number'
			? [
					rule(x(target), sheet.top, x(target), bottom, '#111', '6 4'),
					label(
						Math.min(x(target), sheet.width - 60),
						bottom + 18,
						`${varied === 'boost.target' ? 'target' : 'best power'} ${show(target)}`,
						{ anchor: 'middle' },
					),
				]
			: [];
	const told = rungs
		.map(({ title, value, bound }) => `${title} ${bound === 'above' ? 'over ' : ''}${show(value!)}`)
		.join(', ');
	return drawing('What gives out first', `${told}.`, height, [...bars, ...mark]);
}
