import { expect, test } from 'vitest';
import { renderAudit } from '../../../src/report/render.ts';
import { audited, brokenBuild, changed } from '../../support/audited.ts';
import { testModel } from '../../support/model.ts';

test('a stored code says what it is, and what to do about it first', () => {
	const sheet = changed(brokenBuild(), { 'harness.codes': { value: ['P0335', 'P0117'] } });
	const text = renderAudit(audited(sheet), 'md', 'x', true).text.replace(/\s+/g, ' ');
	expect(text).toMatch(
		/\*\*Stored trouble code \(P0335, no crank signal\)\.\*\* [^*]*No crank signal\. Crank it and read rpm/,
	);
	expect(text).toMatch(
		/\(P0117, coolant temperature signal too low, as if boiling\)\.\*\* [^*]*Plug apart it reads very cold/,
	);
});

test('every code has an action that names what to do, in words for both unit sets', () => {
	const actions = Object.values(testModel().rulebook.codes).map(({ action }) => action);
	expect(actions.length).toBeGreaterThan(150);
	expect(new Set(actions).size).toBeGreaterThan(45);
	for (const action of actions) expect(action).toMatch(/^[A-Z].{30,200}\.$/);
});
