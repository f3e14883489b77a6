/// <reference types="vite/client" />
import { expect, test } from 'vitest';

// Tables are worked out while a file loads. A table that cannot be read must fail a test, not the finding of the tests.
const files = import.meta.glob(['../../src/physics/**/*.ts', '../../src/units/**/*.ts']);

test.each(Object.entries(files))('%s loads by itself', async (_, load) => {
	await expect(load()).resolves.toBeTypeOf('object');
});

test('and these are all', () => {
	expect(Object.keys(files).length).toBeGreaterThan(60);
});
