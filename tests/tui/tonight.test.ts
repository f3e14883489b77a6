import { expect, test } from 'vitest';
import { newApp } from '../../src/tui/app.ts';
import { toAudit } from '../../src/tui/judging.ts';
import { withSheet } from '../../src/tui/open-sheet.ts';
import { reduce } from '../../src/tui/reduce.ts';
import { brokenBuild } from '../support/audited.ts';
import { testModel } from '../support/model.ts';

const audit = toAudit(withSheet(newApp(testModel(), '2026-05-01', 'test', []), brokenBuild(), 'full', null));
const press = (app: typeof audit, ...keys: string[]) =>
	keys.reduce((now, key) => reduce(now, { key: 'text', text: key }), app);

test('an evening keeps to its minutes, changes its place, and puts what is done back into the answers', () => {
	const tonight = press(audit, 'p');
	expect([tonight.screen, tonight.evening]).toEqual(['tonight', { minutes: 120, place: null }]);
	expect(press(tonight, 'm').evening.minutes).toBe(240);
	expect(press(tonight, 'm', 'm').evening.minutes).toBe(30);
	expect(press(tonight, 'w').evening.place).not.toBeNull();
	// Nothing is ticked yet: nothing to put into the answers.
	expect(press(tonight, 'a').screen).toBe('tonight');
	const ticked = press(tonight, ' ');
	expect(ticked.interview!.sheet.ticks).toEqual(['fuel.hose-not-for-injection']);
	const asked = press(ticked, 'a');
	expect(asked.screen).toBe('question');
	expect(asked.interview!.recheck!.todo).toContain('fuel.hose');
	expect(reduce(tonight, { key: 'escape' }).screen).toBe('audit');
	expect(reduce(tonight, { key: 'enter' }).screen).toBe('finding');
});
