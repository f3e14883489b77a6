import { expect, test } from 'vitest';
import { whenAnswerable } from '../../src/wording/when.ts';
import { testModel } from '../support/model.ts';

test.each([
	['fuel.hose', 'now'],
	['charging.voltage_cranking', 'when it cranks'],
	['fuel.pressure_idle', 'when it runs'],
	['fuel.pressure_under_load', 'during the pull'],
	['boost.logged_peak', 'during the pull'],
])('%s is found out %s', (answer, when) => {
	expect(whenAnswerable(testModel().rulebook.questions.find(({ id }) => id === answer)!)).toBe(when);
});
