import { expect, test } from 'vitest';
import { sanitize, typable } from '../../src/text/sanitize.ts';

test.each([
	['\u001b[31mred\u001b[0m', 'red'],
	['\u001b[2J\u001b[1;1Hgone', 'gone'],
	['\u009b31mred', 'red'],
	['\u001b]0;title\u0007name', 'name'],
	['\u001b]8;;x\u001b\\link\u001b]8;;\u001b\\', 'link'],
	['\u001b]never closed', ']never closed'],
	['two\r\nlines\tand\u2028more', 'two lines and more'],
	['\u202eturned\u2066\u200b', 'turned'],
	['\ud800lone', 'lone'],
	['caf\u00e9 \u{1f527} 3.5 \u00b5m', 'caf\u00e9 \u{1f527} 3.5 \u00b5m'],
])('%j becomes %j', (text, wanted) => {
	expect(sanitize(text)).toBe(wanted);
});

test('a long text of openings takes no longer than it is', () => {
	expect(sanitize('\u001b]'.repeat(200_000))).toBe(']'.repeat(200_000));
});

test('what is typed or pasted holds no control characters; columns stay columns', () => {
	expect(typable('0.6\t15\r\n1.5\t90\r\n')).toBe('0.6\t15\n1.5\t90');
	expect(typable('a\u001b[2J\u202eb\u0000')).toBe('ab');
	expect(typable('x'.repeat(200_000)).length).toBe(4000);
});
