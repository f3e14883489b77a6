import { expect, test } from 'vitest';
import { progress } from '../../src/interview/queue.ts';
import { leave, resume, start } from '../../src/interview/session.ts';
import { step } from '../../src/interview/step.ts';
import { noteOn } from '../../src/sheet/notes.ts';
import { answerTo, emptySheet, withAnswer } from '../../src/sheet/sheet.ts';
import { buildSheet, testModel } from '../support/model.ts';

const model = testModel();
const fresh = start(model, emptySheet('mule'), 'quick');

test('a place that a new start would find anyway leaves nothing in the sheet but the quick pass, until its end', () => {
	expect(leave(step(fresh, { do: 'not-known' }), '').draft).toEqual({ pass: 'quick' });
	const full = start(model, emptySheet('mule'), 'full');
	expect(leave(step(full, { do: 'not-known' }), '')).not.toHaveProperty('draft');
	expect(leave({ ...start(model, buildSheet('boosted'), 'quick') }, '')).not.toHaveProperty('draft');
});

test('the pass under way goes on where it was left, whether or not it is named', () => {
	const left = leave(step(fresh, { do: 'not-known' }), '');
	expect(resume(model, left, null).state).toMatchObject({ pass: 'quick', at: 'build.use' });
	expect(resume(model, left, 'quick').state).toMatchObject({ pass: 'quick', at: 'build.use' });
});

test('a section asked for by name is only that section, whatever was half typed elsewhere, and nothing typed is lost', () => {
	const away = step(start(model, emptySheet('mule'), 'quick'), { do: 'go', id: 'charging.exciter' });
	const { state, text } = resume(model, leave(away, 'half'), null, 'driveline');
	expect([state.at?.startsWith('driveline.'), state.pass, text]).toEqual([true, 'full', '']);
	const after = leave(step(state, { do: 'not-known' }), '');
	expect(after.draft).toEqual({ pass: 'quick', id: 'charging.exciter', text: 'half' });
	expect(resume(model, after, null)).toMatchObject({ text: 'half', state: { at: 'charging.exciter', pass: 'quick' } });
});

test('a quick pass asked for by name asks no question of the full one, where the full one was left', () => {
	const away = step(start(model, buildSheet('boosted'), 'full'), { do: 'go', id: 'engine.rings' });
	const { state } = resume(model, leave(away, ''), 'quick');
	expect(state.at).toBeNull();
});

test('text of a sheet that a hand wrote reaches no terminal raw', () => {
	const draft = { id: 'engine.bore', text: '\u001b]0;owned\u0007\u001b[2J3.78' };
	expect(resume(model, { ...emptySheet('mule'), draft }, null).text).toBe('3.78');
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

test('a note alone is no answer: the question stays open, and the note goes with the answer that comes', () => {
	const noted = step(fresh, { do: 'note', text: ' ask the seller ' });
	expect(noted.sheet.answers).toEqual({});
	expect([noted.at, progress(noted).done]).toEqual([fresh.at, 0]);
	const later = resume(model, leave(noted, ''), null).state;
	expect(noteOn(later.sheet, fresh.at!)).toBe('ask the seller');
	const answered = step(later, { do: 'not-known' });
	expect(answerTo(answered.sheet, fresh.at!)).toEqual({ known: 'not-known', note: 'ask the seller' });
	expect(answered.sheet).not.toHaveProperty('notes');
	expect(step(noted, { do: 'note', text: '' }).sheet).toEqual(fresh.sheet);
	const spoilt = { ...emptySheet('mule'), notes: { 'build.stage': '\u001b[2Jred', 'build.use': 7 } };
	expect([noteOn(spoilt, 'build.stage'), noteOn(spoilt, 'build.use')]).toEqual(['red', '']);
});
