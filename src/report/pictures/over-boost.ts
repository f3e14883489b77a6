import type { Assessment } from '../../audit/assess.ts';
import { evaluate, valueIn } from '../../graph/solve.ts';
import { type Level, type Series, strips } from './curves.ts';
import type { Picture } from './draw.ts';
import { inUnits } from './in-units.ts';

const drawn = [
	{ id: 'injectors.duty', title: 'Injector duty' },
	{ id: 'injectors.pressure_across', title: 'Pressure across the injectors' },
	{ id: 'ignition.spark_margin', title: 'Spark margin' },
] as const;

/** The axis reaches 1.5 times the target, and 10 psi at the least. */
const leastReach = 68948;

/** Duty, pressure across and spark margin over boost, the target marked. Null without boost or without figures. */
export function drawOverBoost({ state, wording }: Assessment): Picture | null {
	const target = valueIn(state, 'boost.target');
	if (typeof target !== 'number' || valueIn(state, 'boost.kind') === 'none') return null;
	const boosts = Array.from({ length: 25 }, (_, step) => (Math.max(target * 1.5, leastReach) * step) / 24);
	const ids = drawn.map(({ id }) => id);
	const values = boosts.map(boost => evaluate(state, ids, { 'boost.target': boost }));
	const axis = inUnits(wording, 'boost.target');
	const series = drawn.flatMap(({ id, title }, index): Series[] => {
		const own = inUnits(wording, id);
		const points = boosts.flatMap((boost, at) => {
			const value = values[at]![index];
			return typeof value === 'number' && Number.isFinite(value) ? [[axis.of(boost), own.of(value)] as const] : [];
		});
		if (points.length < 2) return [];
		const most = id === 'injectors.duty' ? valueIn(state, 'injectors.duty_limit') : undefined;
		const level: Level | null =
			typeof most === 'number'
				? { at: own.of(most), title: `at most ${own.show(own.of(most))}`, wrong: 'above' }
				: id === 'ignition.spark_margin'
					? { at: 0, title: 'misfires under this', wrong: 'below' }
					: null;
		return [{ title, points, show: own.show, ...(level ? { level } : {}) }];
	});
	if (series.length === 0) return null;
	const ends = series
		.map(({ title, points, show }) => `${title} from ${show(points[0]![1])} to ${show(points.at(-1)![1])}`)
		.join('; ');
	const mark = { at: axis.of(target), title: `target ${axis.show(axis.of(target))}` };
	const words = `From no boost to ${axis.show(axis.of(boosts.at(-1)!))}: ${ends}. ${mark.title}.`;
	return strips('What moves with boost', words, { title: 'boost', show: axis.show, mark }, series);
}
