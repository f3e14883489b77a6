import { valueIn } from '../graph/solve.ts';
import type { Interval } from '../rulebook/rulebook.ts';
import type { Assessment } from './assess.ts';

/** A look that comes round by distance: what of it is known on this car. Distances are meters. */
export interface Check extends Interval {
	/** Where it is due, counted from the first drive; null where it comes round, or goes by an occasion. */
	readonly due: number | null;
	/** Whether somebody has said that it is done. */
	readonly done: boolean;
	/** How far it still is; less than 0 when it is over; null where that is not known, or goes by an occasion. */
	readonly left: number | null;
}

/** Null where it is not known. */
const distanceIn = ({ state }: Pick<Assessment, 'state'>, id: string): number | null => {
	const value = valueIn(state, id);
	return typeof value === 'number' ? value : null;
};

/** The checks of the first miles and those after them, in the order in which they come due. */
export function checksByDistance(assessment: Pick<Assessment, 'state' | 'audit' | 'model'>): Check[] {
	const { rules, intervals } = assessment.model.rulebook;
	const driven = distanceIn(assessment, 'build.miles_since_first_drive');
	const dueOf = (id: string | null): number | null => {
		const due = rules.find(rule => rule.id === id)?.thresholds.due?.value;
		return due?.[0] === 'value' && typeof due[1] === 'number' ? due[1] : null;
	};
	const last = Math.max(0, ...intervals.map(({ rule }) => dueOf(rule) ?? 0));
	return intervals.map(interval => {
		const due = dueOf(interval.rule);
		const verdict = assessment.audit.findings.find(({ rule }) => rule === interval.rule)?.verdict;
		const next =
			interval.every !== null && driven !== null && driven >= last ? distanceIn(assessment, interval.every) : null;
		return { ...interval, due, done: verdict === 'holds', left: due === null || driven === null ? next : due - driven };
	});
}
