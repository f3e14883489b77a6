import type { Interval, Rule } from '../rulebook.ts';
import { type Fields, quote } from './fields.ts';
import type { Names } from './names.ts';
import { readPlain, refuseNames } from './words.ts';

/** What is looked at again once it drives (rules/intervals.yaml). */
export function readIntervals(root: Fields, names: Names, rules: readonly Rule[]): Interval[] {
	return root.innerList('intervals').map(inner => {
		const [name, look] = ['name', 'look'].map(key => {
			const text = readPlain(inner, key);
			refuseNames(inner, key, text);
			return text;
		}) as [string, string];
		const interval = { name, look, rule: ruleOf(inner, rules), every: distanceOf(inner, names) };
		inner.refuseRest();
		return interval;
	});
}

/** A rule with the distance at which it is due. */
function ruleOf(inner: Fields, rules: readonly Rule[]): string | null {
	if (!inner.has('rule')) return null;
	const id = inner.text('rule');
	const due = rules.find(rule => rule.id === id)?.thresholds.due;
	if (due?.kind === 'distance' && due.value[0] === 'value') return id;
	inner.report('rule', `rule: ${quote(id)} is no rule with a threshold due that is a distance`);
	return null;
}

function distanceOf(inner: Fields, names: Names): string | null {
	if (!inner.has('every')) return null;
	const id = inner.text('every');
	const type = names.get(id);
	if (type?.is === 'number' && type.kind === 'distance') return id;
	inner.report('every', `every: ${quote(id)} is no answer and no quantity that is a distance`);
	return null;
}
