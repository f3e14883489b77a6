import { describe, expect, test } from 'vitest';
import { KeyReader } from '../../src/tui/keys.ts';

const names = (chunks: readonly string[]) => {
	const reader = new KeyReader();
	return chunks.flatMap(chunk => reader.read(chunk)).map(key => ('text' in key ? `${key.key}:${key.text}` : key.key));
};

describe('keys come out one by one, however they were cut into reads', () => {
	test('a fast typist: many keys in one read', () => {
		expect(names(['3.9\r'])).toEqual(['text:3', 'text:.', 'text:9', 'enter']);
	});

	test('an arrow cut in two', () => {
		expect(names(['\u001b[', 'A'])).toEqual(['up']);
	});

	test('arrows in both modes, with and without a modifier', () => {
		expect(names(['\u001b[A\u001bOB\u001b[1;5C\u001b[1;2D'])).toEqual(['up', 'down', 'right', 'left']);
	});

	test('a paste over several reads is one key', () => {
		expect(names(['\u001b[200~0.6\t15\n', '1.5\t90\n\u001b[20', '1~x'])).toEqual([
			'paste:0.6\t15\n1.5\t90\n',
			'text:x',
		]);
	});

	test('control keys, delete and backspace', () => {
		expect(names(['\u0003\u0004\u007f\b\u001b[3~'])).toEqual(['ctrl-c', 'ctrl-d', 'backspace', 'backspace', 'delete']);
	});

	test('a sequence that means nothing is passed over whole', () => {
		expect(names(['\u001b[24~a\u001b[?1;2cb'])).toEqual(['text:a', 'text:b']);
	});

	test('characters beyond the first plane stay whole', () => {
		expect(names(['a\u{1f527}'])).toEqual(['text:a', 'text:\u{1f527}']);
	});
});

test('a lone escape waits, and is an escape when nothing follows', () => {
	const reader = new KeyReader();
	expect(reader.read('\u001b')).toEqual([]);
	expect(reader.waiting).toBe(true);
	expect(reader.flush()).toEqual([{ key: 'escape' }]);
	expect(reader.waiting).toBe(false);
});

test('an escape before a letter is an escape and the letter', () => {
	expect(names(['\u001bq'])).toEqual(['escape', 'text:q']);
});
