import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/audit/audit.ts';
import { gateOpen, readiness } from '../../src/audit/stages.ts';

const finding = (stage: Finding['stage'], verdict: Finding['verdict'], harm: Finding['harm'] = 'annoys') =>
	({ stage, verdict, harm }) as Finding;

const isReady = (found: readonly Finding[], stage: Finding['stage'], unboosted = false) =>
	readiness(found, unboosted).find(other => other.stage === stage)!.ready;

describe('a stage is ready', () => {
	test('when nothing of its own fails', () => {
		expect(isReady([finding('fire', 'fails')], 'fire')).toBe(false);
		expect(isReady([finding('fire', 'fails')], 'crank')).toBe(true);
		expect(isReady([finding('fire', 'holds'), finding('fire', 'does-not-apply')], 'fire')).toBe(true);
	});

	test('unless something serious cannot be told', () => {
		for (const harm of ['person', 'engine', 'strands'] as const)
			expect(isReady([finding('move', 'cannot-tell', harm)], 'move')).toBe(false);
		for (const harm of ['wear', 'annoys'] as const)
			expect(isReady([finding('move', 'cannot-tell', harm)], 'move')).toBe(true);
	});

	test('not when a rule broke', () => {
		expect(isReady([finding('tidy', 'not-evaluated')], 'tidy')).toBe(false);
	});

	test('for boost, always without boost', () => {
		expect(isReady([finding('boost', 'fails')], 'boost', true)).toBe(true);
	});
});

test('a gate asks for its stage and every earlier one', () => {
	const stages = readiness([finding('fire', 'fails')], false);
	expect(gateOpen(stages, 'crank')).toBe(true);
	for (const gate of ['fire', 'move', 'boost', 'tidy'] as const) expect(gateOpen(stages, gate)).toBe(false);
});

test('fails and cannot-tells are counted a stage', () => {
	const [crank] = readiness(
		[finding('crank', 'fails'), finding('crank', 'cannot-tell'), finding('crank', 'cannot-tell')],
		false,
	);
	expect(crank).toEqual({ stage: 'crank', ready: false, fails: 1, cannot_tell: 2 });
});
