import { describe, expect, test } from 'vitest';
import { harms, type Rule, stages } from '../../src/rulebook/rulebook.ts';
import { testModel } from '../support/model.ts';
import { catalog } from './catalog.ts';
import { belowFloor, hasFloor } from './floor.ts';

const { rules, questions, cautions, limits, procedures } = testModel().rulebook;
const byId = new Map(rules.map(rule => [rule.id, rule]));

test('every line of the catalog has its rules', () => {
	const lacking = catalog.flatMap(({ says, rules: ids }) =>
		ids.filter(id => !byId.has(id)).map(id => `${says}: ${id}`),
	);
	expect(lacking).toEqual([]);
	expect(catalog.length).toBeGreaterThan(150);
});

describe('no rule about what can hurt is filed below its floor', () => {
	test.each(catalog.filter(({ floor }) => floor).map(({ says, rules: ids }) => [says, ids] as const))(
		'%s',
		(_, ids) => {
			expect(ids.filter(id => belowFloor(byId.get(id)!))).toEqual([]);
		},
	);

	test('one step later, or one harm less, is below it', () => {
		const brakes = byId.get('build.brakes-not-proved')!;
		const filed = (change: Partial<Rule>) => belowFloor({ ...brakes, ...change });
		expect(filed({})).toBe(false);
		expect(filed({ stage: 'fire' })).toBe(false);
		expect(filed({ stage: 'boost' })).toBe(true);
		expect(filed({ harm: 'engine' })).toBe(true);
	});

	test('every rule whose harm is a person has a floor', () => {
		expect(rules.filter(rule => rule.harm === 'person' && !hasFloor(rule)).map(({ id }) => id)).toEqual([]);
	});

	test('whatever sprays or leaks petrol is settled before it fires, and none of it is tidy', () => {
		const leaks = rules.filter(
			({ id, cautions: named }) => /^fuel\.(hose-not|tank-hose|worm|leak|vapour)/.test(id) && named.includes('petrol'),
		);
		expect(leaks.length).toBeGreaterThanOrEqual(4);
		for (const { id, stage, harm } of leaks) {
			expect(stages.indexOf(stage), id).toBeLessThanOrEqual(stages.indexOf('fire'));
			expect(harm, id).toBe(harms[0]);
		}
	});
});

test('no text says that something is safe, legal or roadworthy', () => {
	const words = JSON.stringify([
		rules.map(({ examples: _, ...rule }) => rule),
		questions,
		cautions,
		limits,
		procedures,
	]);
	expect(words.match(/[^.]*\b(is|are|be|it's) (safe|legal|roadworthy)\b[^.]*/gi)).toBeNull();
});
