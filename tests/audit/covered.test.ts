import { describe, expect, test } from 'vitest';
import { isListed } from '../../src/audit/stages.ts';
import { valueIn } from '../../src/graph/solve.ts';
import { unwantedOn } from '../../src/quantities/wanted.ts';
import { audited, changed } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';

const thin = { 'fuel.pump_wire_gauge': { value: 18, unit: 'AWG', known: 'measured' } } as const;

describe('a line that another one says as well, and more, is not listed', () => {
	const pump = ['fuel.pump-wire-not-protected', 'fuel.pump-wire-may-burn'];
	const found = (fuse: number) => {
		const fused = { ...thin, 'fuel.pump_fuse': { value: fuse, unit: 'A', known: 'measured' } } as const;
		return audited(changed(buildSheet('boosted'), fused)).audit.findings.filter(({ rule }) => pump.includes(rule));
	};
	const most = Number(valueIn(audited(changed(buildSheet('boosted'), thin)).state, 'fuel.pump_fuse_most'));

	test('a fuse of over 1.5 times the chart is one line, and both verdicts stand', () => {
		const both = found(1.6 * most);
		expect(both.map(({ verdict }) => verdict)).toEqual(['fails', 'fails']);
		expect(both.filter(isListed).map(({ rule }) => rule)).toEqual([pump[1]]);
	});

	test('one between the chart and 1.5 times it is listed by itself', () => {
		expect(
			found(1.2 * most)
				.filter(isListed)
				.map(({ rule }) => rule),
		).toEqual([pump[0]]);
	});
});

test('the ring gap of a rebuilt engine without boost is not asked for once it runs', () => {
	const wanted = (stage: string) => {
		const sheet = changed(buildSheet('unboosted'), {
			'build.stage': { value: stage },
			'engine.rings': { value: 'renewed' },
		});
		return !unwantedOn(audited(sheet).state, testModel().rulebook.questions).has('engine.ring_gap');
	};
	expect(['on-stand', 'wired', 'has-fired', 'drives'].map(wanted)).toEqual([true, true, false, false]);
});
