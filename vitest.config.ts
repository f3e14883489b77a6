import { defineConfig } from 'vitest/config';

/** Long counts take their time; how long a test may take is no statement about the program. */
const longest = process.env.SWAP_AUDIT_LONG === '1' ? 3_600_000 : 60_000;

export default defineConfig({
	test: {
		include: ['tests/**/*.test.{ts,tsx}'],
		globalSetup: ['tests/support/built.ts'],
		testTimeout: longest,
		hookTimeout: longest,
	},
});
