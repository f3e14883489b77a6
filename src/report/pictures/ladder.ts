import { scaleLinear } from 'd3-scale';
import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../graph/solve.ts';
import { limitWords } from '../../wording/as-fine-as-band.ts';
import { bar, color, drawing, edged, label, type Picture, round, rule, sheet } from './draw.ts';
import { inUnits } from './in-units.ts';

/** The axis reaches so many times the target. */
const farthest = 2.5;

/** The limits as bars over an axis, lowest first, the target marked. Null when nothing could be placed. */
export function drawLadder({ audit, wording, state, fits }: Assessment): Picture | null {
	const rungs = audit.limits.filter(({ value }) => value !== null);
	if (rungs.length === 0) return null;
	const show = (value: number) => wording.show(rungs[0]!.limit, value)!;
	const varied = rungs[0]!.unit === 'Pa' ? 'boost.target' : 'engine.peak_rpm';
	const target = valueIn(state, varied);
	const aim = typeof target === 'number' ? target : null;
	const most = Math.max(...rungs.map(({ value, high }) => high ?? value!), aim ?? 0);
	// What lies far beyond the target is cut off there, or it would squeeze what matters.
	const end = aim === null || aim <= 0 ? most * 1.05 : Math.min(most * 1.05, aim * farthest);
	const own = inUnits(wording, rungs[0]!.limit);
	const x = scaleLinear([0, own.of(end) || 1], [sheet.left, sheet.width - sheet.right]);
	const at = (kept: number) => x(Math.min(own.of(kept), own.of(end)));
	const row = (index: number) => sheet.top + index * sheet.line + 20;
	const bottom = sheet.top + rungs.length * sheet.line + 8;
	const before = new Map((fits.prior?.() ?? []).map(rung => [rung.limit, rung]));
	const bars = rungs.flatMap(({ limit, value, low, high, bound }, index) => {
		const y = row(index);
		const prior = before.get(limit);
		const [from, to] = [prior?.low ?? 0, prior?.high ?? 0];
		const span = (from: number, to: number, fill: string) => bar([at(from), y], [at(to) - at(from), 14], fill);
		const whisker = (place: number) => (place > end ? [] : [edged(at(place), y + 2, at(place), y + 12)]);
		const below = Math.min(value!, aim ?? value!);
		const own = bound === 'above' ? color.paper : aim !== null && value! < aim ? color.over : color.fill;
		return [
			span(0, below, own),
			...(value! > below ? [span(below, value!, bound === 'above' ? color.paper : color.spare)] : []),
			...(value! > end
				? [rule(at(end) - 9, y + 17, at(end) - 3, y - 3), rule(at(end) - 4, y + 17, at(end) + 2, y - 3)]
				: []),
			...(from < to
				? [`<rect x="${round(at(from))}" y="${y + 4}" width="${round(at(to) - at(from))}" height="6" fill="#aaa"/>`]
				: []),
			...(low !== null && high !== null && low < high
				? [edged(at(low), y + 7, at(high), y + 7), ...whisker(low), ...whisker(high)]
				: []),
			// The target crosses the bars only: a line through words strikes them out.
			...(aim === null ? [] : [edged(at(aim), y - 2, at(aim), y + 16, '4 2')]),
		];
	});
	const names = rungs.map(rung => `${rung.title}: ${limitWords(wording, rung.limit, { ...rung, value: rung.value! })}`);
	const mark = aim === null ? null : `${varied === 'boost.target' ? 'target' : 'best power'} ${show(aim)}`;
	const banded = rungs.some(({ low, high }) => low !== null && high !== null && low < high);
	const key = [
		mark === null ? '' : `Dashed: ${mark}. Heavy edge, orange: gives out before it. Pale: what is to spare beyond it.`,
		banded ? 'Thin line with ends: nine of ten cases lie within.' : '',
		before.size > 0 ? 'Gray behind it: the same before the log.' : '',
		rungs.some(({ value }) => value! > end) ? 'Two strokes: the bar goes on.' : '',
	].filter(Boolean);
	const words = `${names.join(', ')}.${mark ? ` Dashed: ${mark}.` : ''}`;
	return drawing('What gives out first', words, bottom + 30 + key.length * 16, [
		...bars,
		...names.map((name, index) => label(sheet.left, row(index) - 4, name)),
		rule(sheet.left, bottom, sheet.width - sheet.right, bottom),
		...x
			.ticks(6)
			.flatMap(tick => [
				rule(x(tick), bottom, x(tick), bottom + 4),
				label(x(tick), bottom + 16, own.show(tick), { anchor: 'middle', size: 11 }),
			]),
		...key.map((words, index) => label(sheet.left, bottom + 36 + index * 16, words, { size: 11 })),
	]);
}
