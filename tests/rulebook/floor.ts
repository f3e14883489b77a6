import { harms, type Rule, stages } from '../../src/rulebook/rulebook.ts';
import { catalog } from './catalog.ts';

const floors = new Map(catalog.flatMap(({ rules, floor }) => (floor ? rules.map(id => [id, floor] as const) : [])));

/** Whether a rule is filed under a later stage or a lesser harm than its line of the catalog allows. */
export function belowFloor({ id, stage, harm }: Rule): boolean {
	const floor = floors.get(id);
	if (!floor) return false;
	return stages.indexOf(stage) > stages.indexOf(floor[0]) || harms.indexOf(harm) > harms.indexOf(floor[1]);
}

/** Whether the catalog says where a rule may be filed. */
export const hasFloor = ({ id }: Rule): boolean => floors.has(id);
