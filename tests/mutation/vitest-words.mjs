import { format } from 'node:util';
import {
	ASYMMETRIC_MATCHERS_OBJECT,
	chai,
	JestAsymmetricMatchers,
	JestChaiExpect,
	JestExtend,
	setState,
} from '@vitest/expect';

// As much of the test runner as the tests of the model use, collected in a list; `expect` is the runner's own.

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
setState({ assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null }, expect);

export const tests = [];
const within = [];

export function describe(name, body) {
	within.push(name);
	body();
	within.pop();
}

export function test(name, body) {
	tests.push({ name: `${tests.length} ${[...within, name].join(' > ')}`, body });
}

test.each = rows => (name, body) => {
	for (const row of rows) {
		const given = Array.isArray(row) ? row : [row];
		test(format(name, ...given), () => body(...given));
	}
};
