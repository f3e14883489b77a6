import { type Expression, namesIn } from '../../expressions/tree.ts';
import type { Rule } from '../rulebook.ts';

/** Which way a threshold must go for a rule to hold in fewer cases: up, down; null where that cannot be decided. */
export type Tighter = 'up' | 'down' | null;

/**
 * Decided by the side of the comparison on which the threshold stands: a most goes down, a least goes up. One that `applies`
 * reads too, or that stands on both sides, in a choice between two, or in a product, is not decided.
 */
export function tighter({ holds, applies, thresholds }: Rule, name: string): Tighter {
	const elsewhere = Object.entries(thresholds).some(([other, { value }]) => other !== name && namesIn(value).has(name));
	if (elsewhere || (applies && namesIn(applies).has(name))) return null;
	const ways = new Set(waysOf(holds, name, 1));
	const [way] = ways;
	return ways.size !== 1 || way === 0 ? null : way === 1 ? 'up' : 'down';
}

/** 1: more of it makes the rule stricter; -1: less of it does; 0: not decided. One for each place where it stands. */
type Way = 1 | -1 | 0;

const turned = (way: Way): Way => (way === 1 ? -1 : way === -1 ? 1 : 0);

/** Of a yes-or-no; `strict` is 1 where its being true is what the rule asks for. */
function waysOf(tree: Expression, name: string, strict: Way): Way[] {
	if (!namesIn(tree).has(name)) return [];
	switch (tree[0]) {
		case '&&':
		case '||':
			return [...waysOf(tree[1], name, strict), ...waysOf(tree[2], name, strict)];
		case '!':
			return waysOf(tree[1], name, turned(strict));
		case '<':
		case '<=':
			// What stands on the right of <= is a most: more of it is laxer.
			return [...slopesOf(tree[1], name, strict), ...slopesOf(tree[2], name, turned(strict))];
		case '>':
		case '>=':
			return [...slopesOf(tree[1], name, turned(strict)), ...slopesOf(tree[2], name, strict)];
		default:
			return [0];
	}
}

/** Of a sum: how a side of a comparison goes with the threshold. */
function slopesOf(tree: Expression, name: string, way: Way): Way[] {
	if (!namesIn(tree).has(name)) return [];
	if (tree[0] === 'name') return [way];
	if (tree[0] === '+') return [...slopesOf(tree[1], name, way), ...slopesOf(tree[2], name, way)];
	if (tree[0] === '-' && tree.length === 3)
		return [...slopesOf(tree[1], name, way), ...slopesOf(tree[2], name, turned(way))];
	return [0];
}
