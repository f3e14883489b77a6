import type { Interval, PullView } from './pull.ts';
import { highest, median, runningMedian } from './statistics.ts';

/**
 * The part of a pull at full load: from `full.after` past the first demand and boost at `full.of_peak` of its peak to the lift,
 * a limiter or a fuel cut (rules/episodes.yaml). Undefined where boost is not logged though the engine is boosted, or nothing is left.
 */
export function fullLoadPart(pull: Omit<PullView, 'full'>): Interval | undefined {
	const { declared, boosted, whole } = pull;
	const begin = whole[0] + declared.full.after;
	const { end } = pull;
	if (boosted === undefined) return undefined;
	if (!boosted) return begin < end ? [begin, end] : undefined;
	const boost = pull.in('boost', [begin, end]);
	const peak = highest(boost);
	if (!peak) return undefined;
	const enough = runningMedian(boost);
	const at = (index: number) => enough.value[index]! >= declared.full.of_peak * peak.value;
	let first = 0;
	while (first < enough.value.length && !at(first)) first++;
	let last = enough.value.length - 1;
	while (last > first && !at(last)) last--;
	if (first >= last) return undefined;
	// The last reading counts where boost held to the end.
	return [enough.time[first]!, last === enough.value.length - 1 ? end : enough.time[last]!];
}

/** The lift, or a limiter or a fuel cut before it, s. */
export const endOf = (pull: Omit<PullView, 'full' | 'end'>): number =>
	Math.min(pull.whole[1], cutAt(pull), limiterAt(pull));

/** When fuel was cut: a pulse or a duty that falls far under what it was. */
function cutAt(pull: Omit<PullView, 'full' | 'end'>): number {
	const [from, to] = pull.whole;
	for (const id of ['injector_pulse', 'injector_duty']) {
		const { time, value } = pull.in(id, [from + pull.declared.full.after, to]);
		const usual = median(value);
		const cut = value.findIndex(one => one < pull.declared.full.cut * usual);
		if (cut >= 0) return time[cut]! - 1e-6;
	}
	return Number.POSITIVE_INFINITY;
}

/** When a limiter set in: engine speed reached its highest, and fell by more than its noise with the foot down. */
function limiterAt(pull: Omit<PullView, 'full' | 'end'>): number {
	const { time, value } = pull.in('engine_speed');
	let top = 0;
	for (let index = 1; index < value.length; index++) if (value[index]! > value[top]!) top = index;
	for (let index = top + 1; index < value.length; index++)
		if (value[top]! - value[index]! > pull.declared.full.limiter) return time[top]!;
	return Number.POSITIVE_INFINITY;
}
