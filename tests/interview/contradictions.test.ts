import { expect, test } from 'vitest';
import { open } from '../../src/interview/queue.ts';
import { start } from '../../src/interview/session.ts';
import type { State } from '../../src/interview/state.ts';
import { step } from '../../src/interview/step.ts';
import { answerTo, emptySheet } from '../../src/sheet/sheet.ts';
import { testModel } from '../support/model.ts';

const model = testModel();
const at = (id: string, state = start(model, emptySheet('mule'), 'full')): State => ({ ...state, at: id });
const typed = (state: State, text: string) => step(state, { do: 'enter', text });

test('an answer that contradicts another is asked on the spot, and kept when it is entered once more', () => {
	const relay = typed(at('harness.pump_relay'), 'hand-switch');
	const cutoff = typed(at('harness.pump_cutoff', relay), 'controller-only');
	expect(cutoff.at).toBe('harness.pump_cutoff');
	expect(answerTo(cutoff.sheet, 'harness.pump_cutoff')).toBeUndefined();
	expect(cutoff.said?.text).toMatch(
		/^Read as .* That contradicts what stands: pump relay control: .*Enter it once more/,
	);
	const kept = typed(cutoff, 'controller-only');
	expect([answerTo(kept.sheet, 'harness.pump_cutoff')?.value].flat()).toEqual(['controller-only']);
	expect(kept.at).not.toBe('harness.pump_cutoff');
	// By keys of a list too; another answer instead is simply taken.
	const set = step(at('harness.pump_cutoff', relay), { do: 'set', answer: { value: ['controller-only'] } });
	expect(set.said?.kind).toBe('odd');
	expect(typed(set, 'crash-switch').at).not.toBe('harness.pump_cutoff');
});

test('what is not known contradicts nothing, and a contradiction that stands is not reported a second time', () => {
	const unknown = step(at('harness.pump_relay'), { do: 'not-known' });
	expect(typed(at('harness.pump_cutoff', unknown), 'controller-only').at).not.toBe('harness.pump_cutoff');
	const both = typed(typed(at('harness.pump_cutoff', typed(at('harness.pump_relay'), 'hand-switch')), '3'), '3');
	expect(typed(at('build.use', both), '1').said?.kind).toBe('read');
});

test('the conditions of a figure that is not known are not asked; they are once it is known', () => {
	const asks = (state: State) => open(state).some(({ id }) => id === 'fuel.pump_flow_pressure');
	const unknown = step(at('fuel.pump_flow'), { do: 'not-known' });
	expect(asks(at('fuel.pump_flow'))).toBe(true);
	expect(asks(unknown)).toBe(false);
	expect(asks(typed(at('fuel.pump_flow', unknown), '66'))).toBe(true);
});

test('every question that follows another follows one that is asked before it', () => {
	const order = model.rulebook.questions.map(({ id }) => id);
	const following = model.rulebook.questions.filter(({ follows }) => follows !== null);
	expect(following.length).toBeGreaterThan(5);
	for (const { id, follows } of following) expect(order.indexOf(follows!)).toBeLessThan(order.indexOf(id));
});
