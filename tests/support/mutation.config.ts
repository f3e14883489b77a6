import { defineConfig } from 'vitest/config';

/** Only the tests of the two rooms that are mutated, and no build. */
export default defineConfig({
	test: {
		include: ['tests/{physics,units}/**/*.test.ts', 'tests/outside/**/*.test.ts'],
		testTimeout: 60_000,
	},
});
