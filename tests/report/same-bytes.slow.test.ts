import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeModel } from '../../src/audit/model.ts';
import { renderAudit } from '../../src/report/render.ts';
import { counts, seed } from '../counts.ts';
import { audited, brokenBuild } from '../support/audited.ts';
import { compileRules, ruleTexts, sha256 } from '../support/model.ts';

const formats = ['md', 'html', 'json', 'csv'] as const;
const rendered = (texts: ReturnType<typeof ruleTexts>) => {
	const model = makeModel(compileRules(texts).rulebook, sha256);
	const assessment = audited(brokenBuild(), { draws: 20, next: true }, model);
	return formats.map(format => renderAudit(assessment, format, 'mule'));
};

test('the same bytes in every format, whatever the order in which the rule files are read', () => {
	const texts = ruleTexts();
	const wanted = rendered(texts);
	expect(wanted[0]!.text.length).toBeGreaterThan(10_000);
	expect(Object.keys(wanted[0]!.attachments).length).toBe(5);
	fc.assert(
		fc.property(fc.shuffledSubarray([...texts], { minLength: texts.length }), shuffled => {
			expect(rendered(shuffled)).toEqual(wanted);
		}),
		{ seed, numRuns: counts.orders },
	);
});
