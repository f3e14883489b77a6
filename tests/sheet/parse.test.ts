import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseSheet } from '../../src/sheet/parse.ts';
import { BadSheet } from '../../src/sheet/problem.ts';
import { seed } from '../counts.ts';

const foundIn = (text: string): string => {
	try {
		parseSheet(text);
		return 'nothing wrong';
	} catch (error) {
		if (error instanceof BadSheet) return error.problems[0]!.found;
		throw error;
	}
};

describe('the text of a sheet', () => {
	test('may begin with a byte order mark', () => {
		expect(parseSheet('\ufeff{"a": 1}')).toEqual({ a: 1 });
	});

	test.each([
		['', 'an empty file'],
		[' \n\t', 'an empty file'],
		['\ufeff', 'an empty file'],
		[
			'{"a": 1,\n "b": }',
			'text that is not JSON at line 2, column 7: a value is missing, or there is a comma too many before it',
		],
		[
			'\ufeff{"b": }',
			'text that is not JSON at line 1, column 7: a value is missing, or there is a comma too many before it',
		],
		['{"a": NaN}', 'text that is not JSON at line 1, column 7: not a JSON value'],
		['{"a": {"b": 1}},\n{"c": 2}', 'text that is not JSON at line 1, column 16: text after the end'],
		['{"a": "x\ty"}', 'text that is not JSON at line 1, column 7: a control character in a string'],
		['{"a": 012}', 'text that is not JSON at line 1, column 8: a comma is missing'],
		["{'a': 1}", 'text that is not JSON at line 1, column 2: not a JSON value'],
		['{"a": 1, // mine\n"b": 2}', 'text that is not JSON at line 1, column 10: a comment, which JSON does not have'],
		[
			'{"a": 1,}',
			'text that is not JSON at line 1, column 9: a key in double quotes is missing, or there is a comma too many before it',
		],
		['{"a": "never closed}\n', 'text that is not JSON at line 1, column 7: a string without its closing quote'],
		['{"a": [1, 2', 'a file that ends before its JSON does'],
		['{"a": 1} x', 'text that is not JSON at line 1, column 10: not a JSON value'],
		['['.repeat(10_000), 'brackets more than 40 deep'],
		[`${'['.repeat(41)}${']'.repeat(41)}`, 'brackets more than 40 deep'],
		['{"a": 1,\n "a": 2}', '"a" a second time at line 2, column 2'],
		['{"s": [{"x": 1, "\\u0078" : 2}]}', '"x" a second time at line 1, column 17'],
		['{"a": {"\\u001b": 1, "\\u001b": 2}}', '"\\u001b" a second time at line 1, column 21'],
	])('%j is refused where it is wrong', (text, found) => {
		expect(foundIn(text)).toBe(found);
	});

	test.each([
		`${'['.repeat(40)}${']'.repeat(40)}`,
		JSON.stringify({ note: '['.repeat(100) }),
		'{"a": {"x": 1}, "b": {"x": 1}, "c": ["x", "x", "a"]}',
		'{"a": "a", "b": "\\"b\\":", "c\\\\": 1, "c": 2}',
	])('%j is fine', text => {
		expect(parseSheet(text)).toEqual(JSON.parse(text));
	});

	test('is read as JSON reads it, or refused; nothing else comes out', () => {
		const bits = fc.constantFrom('{', '}', '[', ']', '"', ':', ',', '\\', '\\"', 'a', '1', ' ', '\n', 'null', '"a":');
		fc.assert(
			fc.property(fc.array(bits, { maxLength: 14 }), parts => {
				const text = parts.join('');
				let json: unknown;
				try {
					json = JSON.parse(text);
				} catch {
					expect(() => parseSheet(text)).toThrow(BadSheet);
					return;
				}
				if (foundIn(text).includes('a second time')) return;
				expect(parseSheet(text)).toEqual(json);
			}),
			{ seed, numRuns: 5000 },
		);
	});

	test('never loses a key: of two alike none is dropped in silence', () => {
		const name = fc.constantFrom('a', 'b', 'c', '"', '\\');
		fc.assert(
			fc.property(fc.array(fc.tuple(name, fc.jsonValue({ maxDepth: 1 })), { minLength: 1, maxLength: 4 }), entries => {
				const text = `{"in": {${entries.map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`).join(', ')}}}`;
				const unique = new Set(entries.map(([key]) => key)).size === entries.length;
				expect(foundIn(text).includes('a second time')).toBe(!unique);
			}),
			{ seed, numRuns: 2000 },
		);
	});
});
