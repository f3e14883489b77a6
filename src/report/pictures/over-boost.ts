import type { Assessment } from '../../audit/assess.ts';
import { valueIn } from '../../audit/conditions.ts';
import { evaluate } from '../../quantities/replace.ts';
import { type Series, strips } from './curves.ts';
import { inUnits } from './in-units.ts';

const drawn = [
	{ id: 'injectors.duty', title: 'Injector duty', dash: '', level: 'injectors.duty_limit', levelTitle: 'the most' },
	{ id: 'injectors.pressure_across', title: 'Pressure across the injectors', dash: '7 3' },
	{ id: 'ignition.spark_margin', title: 'Spark margin', dash: '2 3', zero: 'misfires under this' },
] as const;

/** Duty, pressure across and spark margin over boost, the target marked. Null without boost or without figures. */
export function drawOverBoost({ state, wording }: Assessment): string | null {
	const target = valueIn(state, 'boost.target');
	if (typeof target !== 'number' || valueIn(state, 'boost.kind') === 'none') return null;
	const boosts = Array.from({ length: 25 }, (_, step) => (Math.max(target * 1.5, 68948) * step) / 24);
	const ids = drawn.map(({ id }) => id);
	const values = boosts.map(boost => evaluate(state, ids, { 'boost.target': boost }));
	const axis = inUnits(wording, 'boost.target');
	const series = drawn.flatMap((row, index): (Series & { level?: { at: number; title: string } })[] => {
		const own = inUnits(wording, row.id);
		const points = boosts.flatMap((boost, at) => {
			const value = values[at]![index];
			return typeof value === 'number' && Number.isFinite(value) ? [[axis.of(boost), own.of(value)] as const] : [];
		});
		if (points.length < 2) return [];
		const limit = 'level' in row ? valueIn(state, row.level) : undefined;
		const level =
			typeof limit === 'number'
				? { at: own.of(limit), title: row.title && 'levelTitle' in row ? row.levelTitle : '' }
				: 'zero' in row
					? { at: 0, title: row.zero }
					: undefined;
		return [
			{
				title: row.title,
				dash: row.dash,
				points,
				show: own.show,
				...(level ? { level } : {}),
			},
		];
	});
	if (series.length === 0) return null;
	const told = series
		.map(({ title, points, show: write }) => `${title} from ${write(points[0]![1])} to ${write(points.at(-1)![1])}`)
		.join('; ');
	return strips('What moves with boost', `${told}.`, 'boost', axis.show, series, {
		at: axis.of(target),
		title: `target ${axis.show(axis.of(target))}`,
	});
}
