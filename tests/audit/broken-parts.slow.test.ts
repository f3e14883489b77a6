import { describe, expect, test } from 'vitest';
import type { Model } from '../../src/audit/model.ts';
import type { Expression } from '../../src/expressions/tree.ts';
import { programFault } from '../../src/graph/evaluation.ts';
import { modelGraph } from '../../src/quantities/model-graph.ts';
import { renderAudit } from '../../src/report/render.ts';
import { Judge } from '../../src/rulebook/judge.ts';
import { audited } from '../support/audited.ts';
import { buildSheet, testModel } from '../support/model.ts';

// A formula or a rule with a fault in it, put into a copy of the model: what leans on it is not evaluated, the rest stands.

const sheet = buildSheet('boosted');
const whole = audited(sheet, { draws: 10 });

/** The model with the formula of one quantity replaced by one that throws. */
function withBrokenFormula(id: string): Model {
	const model = testModel();
	const broken = () => {
		throw new TypeError('broken on purpose');
	};
	const quantities = model.quantities.map(quantity =>
		quantity.id === id ? { ...quantity, compute: broken } : quantity,
	);
	return { ...model, graph: modelGraph(model.rulebook.questions, quantities) };
}

const verdicts = ({ audit }: typeof whole) =>
	new Map(audit.findings.map(({ rule, subject, verdict }) => [`${rule} ${subject}`, verdict]));

describe('a formula that throws', () => {
	const hurt = audited(sheet, { draws: 10 }, withBrokenFormula('injectors.duty'));

	test('costs its own figure, with the reason, and the verdicts made from it', () => {
		const slot = hurt.state.graph.slotOf.get('injectors.duty')!;
		expect(hurt.audit.quantities['injectors.duty']!.value).toBeNull();
		expect(hurt.state.broken.get(slot)).toBe(`${programFault}: broken on purpose`);
		const [before, after] = [verdicts(whole), verdicts(hurt)];
		const moved = [...after].filter(([key, verdict]) => verdict !== before.get(key));
		expect(moved.length).toBeGreaterThan(0);
		expect(moved.length).toBeLessThan(10);
		expect(new Set(moved.map(([, verdict]) => verdict))).toEqual(new Set(['not-evaluated']));
		expect([...after.keys()].sort()).toEqual([...before.keys()].sort());
	});

	test('is one line a verdict in the printed audit, and no stage that leans on it is ready', () => {
		const { text } = renderAudit(hurt, 'md', 'x', true);
		const lost = hurt.audit.findings.filter(({ verdict }) => verdict === 'not-evaluated');
		for (const { title } of lost) expect(text.split(title).length - 1, title).toBeGreaterThan(0);
		expect(text).toContain('broken on purpose');
		for (const { stage } of lost) expect(hurt.audit.stages.find(other => other.stage === stage)!.ready).toBe(false);
	});
});

test('whichever formula throws, there is an audit with every finding, and what is not evaluated says why', () => {
	const quantities = testModel().quantities.filter(({ kind }) => kind !== 'hidden');
	for (const { id } of quantities.filter((_, index) => index % 7 === 0)) {
		const { audit } = audited(sheet, {}, withBrokenFormula(id));
		expect(audit.findings.length, id).toBeGreaterThan(100);
		for (const { verdict, why } of audit.findings) if (verdict === 'not-evaluated') expect(why, id).not.toBe('');
	}
});

test('a rule that throws is not evaluated, every other verdict is as it was', () => {
	const model = testModel();
	const throws: Expression = ['in', ['value', 'x'], ['value', 3]];
	const rules = model.rulebook.rules.map((rule, index) =>
		index === 3 ? { ...rule, applies: null, each: null, holds: throws } : rule,
	);
	const rulebook = { ...model.rulebook, rules };
	const hurt = audited(sheet, { draws: 10 }, { ...model, rulebook, judge: new Judge(rulebook, model.graph.slotOf) });
	const [before, after] = [verdicts(whole), verdicts(hurt)];
	const moved = [...after].filter(([key, verdict]) => verdict !== before.get(key)).map(([key]) => key.split(' ')[0]);
	expect(moved).toEqual([rules[3]!.id]);
	expect(hurt.audit.findings.find(({ rule }) => rule === rules[3]!.id)).toMatchObject({ verdict: 'not-evaluated' });
});
