import { expect, test } from 'vitest';
import { printJson } from '../../src/report/json.ts';

test('JSON holds nothing that a terminal obeys, and reads back as the same value', () => {
	const value = { name: 'a\u001b[2J\u007f\u009b31m\u202e\u2028\ufeffb\u{e0041}\u{1f600}', list: [1, null, '\u0000'] };
	for (const indent of [0, 2]) {
		const text = printJson(value, indent);
		expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2028\ufeff]/);
		expect(text).not.toMatch(/[\u{e0000}-\u{e007f}]/u);
		expect(JSON.parse(text)).toEqual(value);
	}
	expect(printJson(value)).not.toContain('\n');
});
