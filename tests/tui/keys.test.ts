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
	expect(reader.wait).toBe(40);
	expect(reader.flush()).toEqual([{ key: 'escape' }]);
	expect(reader.wait).toBeNull();
});

test('an escape before a letter is an escape and the letter', () => {
	expect(names(['\u001bq'])).toEqual(['escape', 'text:q']);
});

describe('what a terminal says by itself is no key', () => {
	test.each([
		['a mouse report (xterm, SGR)', '\u001b[<0;12;5M\u001b[<0;12;5m'],
		['a mouse report (xterm, first encoding)', '\u001b[M !!'],
		['its attributes (DA1, DA2)', '\u001b[?62;22c\u001b[>0;276;0c'],
		['its attributes (DA3, a device control string)', '\u001bP!|00000000\u001b\\'],
		['a setting asked for (DECRQSS)', '\u001bP1$r0m\u001b\\'],
		['its focus', '\u001b[I\u001b[O'],
		['a function key of the console', '\u001b[[B'],
		['an application command', '\u001b_Gi=1;OK\u001b\\'],
	])('%s', (_, said) => {
		expect(names([`a${said}b`])).toEqual(['text:a', 'text:b']);
		expect(names([...`a${said}b`])).toEqual(['text:a', 'text:b']);
	});

	test('its background is reported as light or dark', () => {
		const read = (answer: string) => new KeyReader().read(answer);
		expect(read('\u001b]11;rgb:ffff/ffff/eeee\u001b\\')).toEqual([{ key: 'background', light: true }]);
		expect(read('\u001b]11;rgb:1e1e/1e1e/2e2e\u0007')).toEqual([{ key: 'background', light: false }]);
	});
});

test('a paste whose end is lost ends after a second with what came of it', () => {
	const reader = new KeyReader();
	expect(reader.read('\u001b[200~0.6 15, 1.5 90\u001b[20')).toEqual([]);
	expect(reader.wait).toBe(1000);
	expect(reader.flush()).toEqual([{ key: 'paste', text: '0.6 15, 1.5 90' }]);
	expect(reader.wait).toBeNull();
});
