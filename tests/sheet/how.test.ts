import { describe, expect, test } from 'vitest';
import { howOf, wholeHow } from '../../src/sheet/how.ts';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { newApp } from '../../src/tui/app.ts';
import { arrive } from '../../src/tui/asking.ts';
import { withSheet } from '../../src/tui/open-sheet.ts';
import { view } from '../../src/tui/screens/question.ts';
import { testModel } from '../support/model.ts';

const model = testModel();
const question = model.rulebook.questions.find(({ id }) => id === 'build.checked_before_fire')!;

describe('how each tick of a round is found out', () => {
	test('every choice of the two rounds says it, in the units of the reader', () => {
		for (const id of ['build.checked_before_fire', 'build.checked_before_move']) {
			const { howEach, choices } = model.rulebook.questions.find(other => other.id === id)!;
			expect(Object.keys(howEach!)).toEqual(Object.keys(choices));
		}
		const lines = 'fuel-lines-clear-of-heat-and-moving-parts';
		expect(howOf(question, lines, 'us')).toContain('4 in');
		expect(howOf(question, lines, 'metric')).toContain('100 mm');
		expect(howOf(question, 'constructor', 'us')).toBe('');
	});

	test('the whole of it is what holds for all, then each by its words', () => {
		const [all, first] = wholeHow(question, 'us');
		expect(all).toMatch(/^Tick only what you did/);
		expect(first).toMatch(/^The throttle snaps shut from everywhere: Engine off\./);
		expect(wholeHow(question, 'us')).toHaveLength(1 + Object.keys(question.choices).length);
	});

	test('on the screen the row under the cursor says its own', () => {
		const opened = withSheet(newApp(model, '2026-05-01', '0.0.0', []), emptySheet('mule'), 'quick', null);
		const at = arrive({
			...opened,
			screen: 'question',
			interview: { ...opened.interview!, at: question.id, said: null },
		});
		const said = (cursor: number, rows = 24) =>
			view({ ...at, cursor, window: { columns: 80, rows } }, 80, 80)
				.bottom.map(({ text }) => text)
				.join(' ');
		expect(said(2)).toContain('A wrench on every bolt of the mounts');
		expect(said(1)).toContain('nothing stays lit');
		expect(said(2, 12)).not.toContain('A wrench');
	});
});
