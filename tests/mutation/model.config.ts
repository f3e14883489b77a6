import { defineConfig } from 'vitest/config';

/** What computes quantities by another way; no goldens, and nothing that would see a spoilt number by accident. */
export default defineConfig({
	test: {
		include: ['tests/quantities/model/*.test.ts', 'tests/quantities/{design,practice,reached,three-sheets}.test.ts'],
		testTimeout: 60_000,
		// What is loaded once costs more than all tests together.
		isolate: false,
	},
});
