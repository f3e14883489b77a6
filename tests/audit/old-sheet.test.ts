import { describe, expect, test } from 'vitest';
import { stages } from '../../src/sheet/stage.ts';
import { audited, changed } from '../support/audited.ts';
import { testModel } from '../support/model.ts';
import { finished } from './finished.ts';

const { rulebook } = testModel();
const early = stages.slice(0, stages.indexOf('move') + 1);

/** Answers of which a build that was filled in before they were asked for has none: what says what it takes for them. */
const standsIn = rulebook.questions
	.filter(({ kind, usual }) => kind === 'choice' && usual.length > 0)
	.map(({ id }) => id);

describe('a sheet without the answers for which a usual choice stands in is judged as before', () => {
	test.each(finished)('%s', (_, sheet) => {
		expect(standsIn.length).toBeGreaterThan(4);
		const less = changed(sheet, Object.fromEntries(standsIn.map(id => [id, undefined])));
		const held = audited(less).audit.findings.filter(
			({ verdict, harm, stage, missing }) =>
				verdict === 'cannot-tell' &&
				['engine', 'strands'].includes(harm) &&
				early.includes(stage) &&
				missing.some(id => standsIn.includes(id)),
		);
		expect(held.map(({ rule }) => rule)).toEqual([]);
	});
});
