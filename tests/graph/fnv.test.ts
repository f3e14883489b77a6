import { expect, test } from 'vitest';
import { fnv1a } from '../../src/graph/fnv.ts';

// Test vectors of the 32-bit FNV-1a that its authors publish (from memory).
test.each([
	['', 0x811c9dc5],
	['a', 0xe40c292c],
	['foobar', 0xbf9cf968],
])('hashes %j as its authors do', (text, hash) => expect(fnv1a(text)).toBe(hash));
