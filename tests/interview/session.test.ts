import { expect, test } from 'vitest';
import { leave, resume, start } from '../../src/interview/session.ts';
import { step } from '../../src/interview/step.ts';
import { emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { testModel } from '../support/model.ts';

const model = testModel();
const fresh = start(model, emptySheet('mule'), 'quick');

test('a place that a new start would find anyway leaves nothing in the sheet', () => {
	expect(leave(step(fresh, { do: 'not-known' }), '')).not.toHaveProperty('draft');
});

test('a place jumped to, what was put off and half-typed text are found again', () => {
	const away = step(step(fresh, { do: 'later' }), { do: 'section', section: 'fuel' });
	const { state, text } = resume(model, leave(away, 'half'), 'quick');
	expect([state.at, text, [...state.later]]).toEqual([away.at, 'half', ['build.stage']]);
	expect(state.sheet).not.toHaveProperty('draft');
});

test.each([
	null,
	7,
	'x',
	[],
	{},
	{ id: 7, text: 'x' },
	{ id: 'no.such', text: 'x' },
	{ later: 'x', recheck: { todo: [1] } },
])('a draft spoilt by hand, %j, is passed over', draft => {
	const { state, text } = resume(model, { ...emptySheet('mule'), draft }, 'quick');
	expect([state.at, text, state.recheck]).toEqual([fresh.at, '', null]);
});

test('another number of cylinders makes lists of the old one not known, with what they were in a note', () => {
	const sheet = withAnswer(emptySheet('mule'), 'engine.firing_order', { value: [1, 8, 4, 3, 6, 5, 7, 2] });
	const at = step(start(model, sheet, 'full', 'engine'), { do: 'go', id: 'engine.cylinders' });
	const after = step(at, { do: 'enter', text: '6' });
	expect(after.sheet.answers.engine?.firing_order).toEqual({
		known: 'not-known',
		note: 'before: 1, 8, 4, 3, 6, 5, 7, 2',
	});
	expect(after.said?.text).toContain('engine.firing_order');
});

test('nothing typed on a question that has an answer keeps it', () => {
	const sheet = withAnswer(emptySheet('mule'), 'engine.year', { value: 1999 });
	const at = step(start(model, sheet, 'full', 'engine'), { do: 'go', id: 'engine.year' });
	const after = step(at, { do: 'enter', text: '' });
	expect(after.sheet.answers.engine?.year).toEqual({ value: 1999 });
	expect(after.at).not.toBe('engine.year');
	expect(after.said?.text).toBe('Kept: 1999.');
});
