import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Assessment, assess } from '../../src/audit/assess.ts';
import { compare } from '../../src/audit/compare.ts';
import { earlierIn, recordOf } from '../../src/audit/record.ts';
import { namesIn } from '../../src/expressions/tree.ts';
import { reach } from '../../src/graph/paths.ts';
import { type Answer, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { counts, seed } from '../counts.ts';
import { buildSheet, testModel } from '../support/model.ts';

const model = testModel();
const audited = (sheet: Sheet): Assessment =>
	assess(model, { sheet, warnings: [] }, { date: '2026-05-01', units: 'us', tool: 'test', draws: 0 });

const healthy = buildSheet('boosted');
const wideGap = withAnswer(healthy, 'ignition.gap', { value: 0.06, unit: 'in', known: 'measured' });
const widerGap = withAnswer(healthy, 'ignition.gap', { value: 0.07, unit: 'in', known: 'measured' });
const noGap = withAnswer(healthy, 'ignition.gap', { known: 'not-known' });
const changesOf = (from: Sheet, to: Sheet) =>
	compare(recordOf(audited(from)), audited(to))
		.changes.filter(({ rule }) => rule === 'ignition.gap-too-wide')
		.map(({ change }) => change);

describe('since last time', () => {
	test.each([
		['settled', wideGap, healthy],
		['new', healthy, wideGap],
		['worse', wideGap, widerGap],
		['better', widerGap, wideGap],
		['still', wideGap, wideGap],
		['no-longer-tellable', wideGap, noGap],
	] as const)('%s', (change, from, to) => {
		expect(changesOf(from, to)).toEqual([change]);
	});

	test('a sheet against itself: nothing has moved, only what is still open is reported', () => {
		const once = audited(wideGap);
		const since = compare(recordOf(once), once);
		expect(since.changes.every(({ change, by }) => change === 'still' && by === null)).toBe(true);
		expect(since.numbers).toEqual([]);
	});

	test('there and back mirror each other', () => {
		const [a, b] = [audited(healthy), audited(wideGap)];
		const mirror: Readonly<Record<string, string>> = {
			settled: 'new',
			new: 'settled',
			worse: 'better',
			better: 'worse',
			still: 'still',
		};
		const brief = (changes: readonly { rule: string; change: string }[]) =>
			changes.map(({ rule, change }) => [rule, change]);
		expect(brief(compare(recordOf(b), a).changes)).toEqual(
			brief(compare(recordOf(a), b).changes).map(([rule, change]) => [rule, mirror[change!]]),
		);
	});

	test('is by the rules when the rules changed and the answers did not', () => {
		const [a, b] = [recordOf(audited(healthy)), audited(wideGap)];
		const byRules = compare({ ...a, rules: 'others', answers: recordOf(b).answers }, b).changes;
		expect(byRules.filter(({ change }) => change === 'new').every(({ by }) => by === 'rules')).toBe(true);
	});

	test('reads an earlier audit from its JSON', () => {
		const { audit } = audited(wideGap);
		expect(earlierIn(JSON.parse(JSON.stringify(audit)))?.verdicts).toEqual(recordOf(audited(wideGap)).verdicts);
		expect(earlierIn({})).toBeNull();
	});

	test.each([
		null,
		[],
		{ audits: [] },
		{ audits: 5 },
		{ audits: [5] },
		{ audits: [{}] },
		{ audits: [{ ...recordOf(audited(wideGap)), verdicts: [null] }] },
		{ ...audited(wideGap).audit, limits: undefined },
		{ ...audited(wideGap).audit, findings: [null] },
		{ ...audited(wideGap).audit, findings: [{ rule: 'a' }] },
		{ ...audited(wideGap).audit, quantities: [] },
		{ ...audited(wideGap).audit, limits: [{ limit: 'a', value: 'b' }] },
		{ ...audited(wideGap).audit, date: 'soon' },
	])('finds none in a file that is not whole', file => {
		expect(earlierIn(file)).toBeNull();
	});
});

test('one edited answer changes only the findings that depend on it', () => {
	const { graph, rulebook } = model;
	const before = audited(healthy).audit.findings;
	const key = ({ rule, subject }: { rule: string; subject: string | null }) => `${rule} ${subject}`;
	const verdicts = new Map(before.map(finding => [key(finding), finding.verdict]));
	const edits = rulebook.questions.flatMap(question => {
		const answer = healthy.answers[question.id.split('.')[0]!]?.[question.id.split('.')[1]!];
		if (!answer) return [];
		const others: Answer[] = [{ known: 'not-known' }];
		if (question.kind === 'choice') others.push(...Object.keys(question.choices).map(value => ({ value })));
		if (typeof answer.value === 'number' && question.of.length > 0)
			others.push({ ...answer, value: answer.value * 1.03 }, { ...answer, value: answer.value * 0.97 });
		return others.map(other => [question.id, other] as const);
	});
	fc.assert(
		fc.property(fc.constantFrom(...edits), ([id, answer]) => {
			const moved = reach([graph.slotOf.get(id)!], slot => graph.readers[slot]!);
			for (const finding of audited(withAnswer(healthy, id, answer)).audit.findings) {
				const rule = rulebook.rules.find(other => other.id === finding.rule)!;
				const names = namesIn(rule.holds, rule.applies ? namesIn(rule.applies) : new Set());
				for (const threshold of Object.values(rule.thresholds)) namesIn(threshold.value, names);
				if (rule.each) names.add(rule.each.answer);
				const depends = [...names].some(name => moved.has(graph.slotOf.get(name) ?? -1));
				if (!depends) expect(finding.verdict, `${id} moved ${finding.rule}`).toBe(verdicts.get(key(finding)));
			}
		}),
		{ seed, numRuns: counts.edits },
	);
});
