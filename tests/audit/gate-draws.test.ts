import { expect, test } from 'vitest';
import { audited } from '../support/audited.ts';
import { demoSheets } from '../support/demo.ts';
import { buildSheet } from '../support/model.ts';

/** What stages are decided by may leave out what does not decide them, and come to the same. */
test.each([['boosted', buildSheet('boosted')] as const, ...demoSheets()])(
	'stages of %s are the same whether bands are drawn besides or not',
	(_, sheet) => {
		const [whole, alone] = [audited(sheet, { draws: 400 }), audited(sheet, { draws: 0, gateDraws: 400 })];
		expect(alone.audit.stages).toEqual(whole.audit.stages);
		const unproved = ({ audit }: typeof whole) =>
			audit.findings
				.filter(finding => finding.unproved)
				.map(({ rule, subject }) => `${rule} ${subject}`)
				.sort();
		expect(unproved(alone)).toEqual(unproved(whole));
	},
);
