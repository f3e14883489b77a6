import { type Expression, operands } from '../../src/expressions/tree.ts';
import { harms, type Rule, stages } from '../../src/rulebook/rulebook.ts';
import { hasFloor } from './floor.ts';

/** A rule spoilt in one small way, and in words how. */
export interface Spoilt {
	readonly how: string;
	readonly rule: Rule;
}

/** Comparisons turned round and made strict or lax; other signs swapped with their likeliest slip. */
const slips: Readonly<Record<string, readonly string[]>> = {
	'<': ['>=', '<='],
	'<=': ['>', '<'],
	'>': ['<=', '>='],
	'>=': ['<', '>'],
	'==': ['!='],
	'!=': ['=='],
	'&&': ['||'],
	'||': ['&&'],
	'+': ['-'],
	'*': ['/'],
	'/': ['*'],
};

const inShort = (tree: Expression): string => JSON.stringify(tree).slice(0, 90);

/** Every way of spoiling one place of a tree. */
function spoilings(tree: Expression): { how: string; tree: Expression }[] {
	const [sign] = tree;
	const parts = operands(tree);
	const own = (slips[sign] ?? []).map(slip => ({
		how: `${sign} becomes ${slip} in ${inShort(tree)}`,
		tree: [slip, ...parts] as Expression,
	}));
	const spoil = (how: string, spoilt: Expression) => own.push({ how: `${how} in ${inShort(tree)}`, tree: spoilt });
	if (sign === '-' && parts.length === 2) spoil('- becomes +', ['+', parts[0]!, parts[1]!]);
	if (sign === '!') spoil('! dropped', parts[0]!);
	if (sign === '?:') spoil('sides swapped', ['?:', parts[0]!, parts[2]!, parts[1]!]);
	if (sign === 'value' && typeof tree[1] === 'number' && tree[1] !== 0) {
		for (const factor of [1.05, 0.95]) spoil(`times ${factor}`, ['value', tree[1] * factor]);
	}
	if (sign === 'list' && tree[1].length > 1) {
		for (const text of tree[1]) spoil(`"${text}" dropped`, ['list', tree[1].filter(other => other !== text)]);
	}
	const inner = parts.flatMap((part, place) =>
		spoilings(part).map(({ how, tree: changed }) => ({
			how,
			tree: [sign, ...parts.with(place, changed)] as Expression,
		})),
	);
	return [...own, ...inner];
}

/** Every small way of spoiling what a rule judges by: its expressions, its constants, and where it is filed. */
export function spoiltRules(rule: Rule): Spoilt[] {
	const thresholds = Object.entries(rule.thresholds).flatMap(([name, threshold]) =>
		spoilings(threshold.value).map(({ how, tree }) => ({
			how: `${name}: ${how}`,
			rule: { ...rule, thresholds: { ...rule.thresholds, [name]: { ...threshold, value: tree } } },
		})),
	);
	return [
		...spoilings(rule.holds).map(({ how, tree }) => ({ how: `holds: ${how}`, rule: { ...rule, holds: tree } })),
		...(rule.applies ? spoilings(rule.applies) : []).map(({ how, tree }) => ({
			how: `applies: ${how}`,
			rule: { ...rule, applies: tree },
		})),
		...thresholds,
		...(hasFloor(rule) ? misfiled(rule) : []),
	];
}

/** A rule under each later stage and each lesser harm. */
function misfiled(rule: Rule): Spoilt[] {
	const later = stages.slice(stages.indexOf(rule.stage) + 1);
	const lesser = harms.slice(harms.indexOf(rule.harm) + 1);
	return [
		...later.map(stage => ({ how: `stage: ${stage}`, rule: { ...rule, stage } })),
		...lesser.map(harm => ({ how: `harm: ${harm}`, rule: { ...rule, harm } })),
	];
}
