import { defineConfig, type ViteUserConfig } from 'vitest/config';

export default defineConfig(({ mode }) => {
	const long = mode === 'long' || process.env.SWAP_AUDIT_LONG === '1';
	// Long counts take their time; how long a test may take is no statement about the program.
	const longest = long ? 3_600_000 : 60_000;
	const test: ViteUserConfig['test'] = {
		env: { SWAP_AUDIT_LONG: long ? '1' : '' },
		include: ['tests/**/*.test.{ts,tsx}'],
		// What needs a browser, or takes minutes, runs at length only.
		exclude: long ? [] : ['**/*.long.test.*'],
		// The default leaves one core idle: on two cores that is half of the machine.
		maxWorkers: '100%',
		// Files of one worker share what they import: rooms keep nothing between calls, and loading them 175 times costs more than they do.
		isolate: false,
		// Audits leave much behind that is short-lived: with room for it a twentieth less of the time.
		execArgv: ['--max-semi-space-size=128'],
		// Libraries as Node gives them to the program: a proxy over each that is no ES module takes a twentieth of the time of what uses them.
		deps: { interopDefault: false },
		globalSetup: ['tests/support/built.ts'],
		// A golden that is missing is a failure; -u makes it.
		update: 'none',
		testTimeout: longest,
		hookTimeout: longest,
	};
	return { test };
});
