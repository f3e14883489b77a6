import { describe, expect, test } from 'vitest';
import { harms, stages } from '../../src/rulebook/rulebook.ts';
import { testModel } from '../support/model.ts';

// Where the work can hurt someone, a rule is never filed under a later stage or a lesser harm than this. Common practice.
const floor: Readonly<Record<string, readonly string[]>> = {
	'crank person': ['driveline.no-start-inhibit', 'harness.keepalive-unfused'],
	'fire person': [
		'build.throttle-not-proved',
		'build.stop-not-proved',
		'build.fuel-line-near-heat',
		'build.exhaust-in-room',
		'fuel.hose-not-for-injection',
		'fuel.worm-clamps',
		'fuel.leak-test-not-done',
		'fuel.no-extinguisher',
		'injectors.seals-reused',
		'harness.no-pump-cutoff',
		'harness.pump-always-on',
	],
	'move person': [
		'build.steering-not-free',
		'build.steering-near-exhaust',
		'build.brakes-not-proved',
		'build.brake-lines-not-clear',
		'build.booster-loses-vacuum',
		'build.hood-not-clear',
		'build.shaft-travel-not-proved',
		'boost.booster-line-open',
		'driveline.shaft-near-critical',
	],
	'boost person': ['boost.hot-side-bare'],
};

describe('no rule about what can hurt is filed below its floor', () => {
	test.each(Object.entries(floor).flatMap(([place, ids]) => ids.map(id => [id, place] as const)))(
		'%s: %s',
		(id, place) => {
			const [stage, harm] = place.split(' ') as [(typeof stages)[number], (typeof harms)[number]];
			const rule = testModel().rulebook.rules.find(other => other.id === id);
			expect(rule).toBeDefined();
			expect(stages.indexOf(rule!.stage)).toBeLessThanOrEqual(stages.indexOf(stage));
			expect(harms.indexOf(rule!.harm)).toBeLessThanOrEqual(harms.indexOf(harm));
		},
	);

	test('everything about fuel on the pressure side is settled before it fires, and none of it is tidy', () => {
		const leaks = testModel().rulebook.rules.filter(
			({ id, cautions }) => /^fuel\.(hose-not|tank-hose|worm|leak|vapour)/.test(id) && cautions.includes('petrol'),
		);
		expect(leaks.length).toBeGreaterThanOrEqual(4);
		for (const { id, stage, harm } of leaks) {
			expect(['crank', 'fire'], id).toContain(stage);
			expect(harm, id).toBe('person');
		}
	});
});

test('no text says that something is safe, legal or roadworthy', () => {
	const { rules, questions, cautions, limits, procedures } = testModel().rulebook;
	const words = JSON.stringify([
		rules.map(({ examples: _, ...rule }) => rule),
		questions,
		cautions,
		limits,
		procedures,
	]);
	expect(words.match(/[^.]*\b(is|are|be|it's) (safe|legal|roadworthy)\b[^.]*/gi)).toBeNull();
});
