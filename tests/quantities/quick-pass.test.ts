import { describe, expect, test } from 'vitest';
import { assess } from '../../src/audit/assess.ts';
import { makeModel } from '../../src/audit/model.ts';
import type { Expression } from '../../src/expressions/tree.ts';
import { asked } from '../../src/interview/queue.ts';
import { start } from '../../src/interview/session.ts';
import { isList, listKinds, standAlone } from '../../src/sheet/question.ts';
import { type Answer, answerTo, emptySheet, type Sheet, withAnswer } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const model = testModel();

/** A build's answers to the questions of the quick pass, and nothing else. */
function quickOnly(name: 'boosted' | 'unboosted'): Sheet {
	const full = buildSheet(name);
	const state = start(model, full, 'quick');
	return asked(state).reduce((sheet, { id }) => {
		const answer = answerTo(full, id);
		return answer ? withAnswer(sheet, id, answer) : sheet;
	}, emptySheet(name));
}

describe('with only the quick questions answered', () => {
	test.each(['boosted', 'unboosted'] as const)(
		'%s: the figures that matter are known, and 40 verdicts or more',
		name => {
			const { audit } = assess(
				model,
				{ sheet: quickOnly(name), warnings: [] },
				{ date: '2026-05-01', units: 'us', tool: 'test', draws: 0 },
			);
			const known = [
				'engine.air_flow',
				'engine.power',
				'engine.torque',
				'fuel.flow',
				'injectors.duty',
				'fuel.pump_margin',
				'ignition.spark_margin',
				'driveline.clutch_margin',
				'driveline.gearbox_margin',
				...(name === 'boosted' ? ['injectors.boost_limit'] : []),
			];
			for (const id of known)
				expect(audit.quantities[id]?.value, `${id} lacks ${audit.quantities[id]?.missing}`).not.toBeNull();
			expect(
				audit.findings.filter(({ verdict }) => verdict === 'holds' || verdict === 'fails').length,
			).toBeGreaterThanOrEqual(40);
		},
	);
});

describe('the quick pass stays short', () => {
	const set = (sheet: Sheet, id: string, value: unknown): Sheet => withAnswer(sheet, id, { value } as Answer);

	/** How many questions a person is asked who answers as given, choice by choice the answer that asks most. */
	function longest(fixed: Readonly<Record<string, unknown>>): number {
		let sheet = Object.entries(fixed).reduce((now, [id, value]) => set(now, id, value), emptySheet('walk'));
		for (;;) {
			const all = asked(start(model, sheet, 'quick'));
			const next = all.find(({ id }) => answerTo(sheet, id) === undefined);
			if (!next) return all.length;
			const choices = Object.keys(next.choices);
			const values = next.kind === 'choice' ? choices : [[], choices.filter(choice => !standAlone.includes(choice))];
			const candidates = choices.length > 0 ? values.map(value => set(sheet, next.id, value)) : [];
			const options = [...candidates, withAnswer(sheet, next.id, { known: 'not-known' }), ...known(next.id, sheet)];
			const lengths = options.map(option => asked(start(model, option, 'quick')).length);
			sheet = options[lengths.indexOf(Math.max(...lengths))]!;
		}
	}

	/** The answers of the full builds, for questions that are no choice. */
	function known(id: string, sheet: Sheet): Sheet[] {
		const answer = answerTo(buildSheet('boosted'), id);
		return answer ? [withAnswer(sheet, id, answer)] : [];
	}

	/** Whether the quick pass asks a question that hangs on this. */
	function asksWhere(quick: Expression): (sheet: Sheet) => boolean {
		const questions = model.rulebook.questions.map(one => (one.id === 'engine.rings' ? { ...one, quick } : one));
		const other = makeModel({ ...model.rulebook, questions }, () => '');
		return sheet => asked(start(other, sheet, 'quick')).some(({ id }) => id === 'engine.rings');
	}

	test('a question may hang on something ticked; nothing is ticked where nobody knows', () => {
		const asks = asksWhere(['in', ['value', 'stood-a-year'], ['name', 'engine.history']]);
		const sheet = emptySheet('past');
		expect(asks(set(sheet, 'engine.history', ['stood-a-year']))).toBe(true);
		expect(asks(set(sheet, 'engine.history', []))).toBe(false);
		expect(asks(withAnswer(sheet, 'engine.history', { known: 'not-known' }))).toBe(false);
		expect(asks(sheet)).toBe(false);
	});

	test('nor is anything in a list of any other kind', () => {
		const lists = model.rulebook.questions.filter(({ kind }) => isList(kind));
		expect(new Set(lists.map(({ kind }) => kind)).size).toBe(listKinds.length);
		for (const { id } of lists)
			expect(asksWhere(['in', ['value', 'anything'], ['name', id]])(emptySheet('lists')), id).toBe(false);
	});

	test('60 questions at most unboosted with one model year', () => {
		expect(longest({ 'boost.kind': 'none', 'engine.year': 1999, 'harness.year': 1999 })).toBeLessThanOrEqual(60);
	});

	test('70 unboosted with two', () => {
		expect(longest({ 'boost.kind': 'none', 'engine.year': 1999, 'harness.year': 1996 })).toBeLessThanOrEqual(70);
	});

	test('86 on any path', () => {
		expect(longest({})).toBeLessThanOrEqual(86);
	});
});
