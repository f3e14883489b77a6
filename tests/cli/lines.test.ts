import { expect, test } from 'vitest';
import { judgeLine, type Line } from '../../src/cli/lines/judge-line.ts';
import { fill, makeBuffer } from '../../src/cli/lines/line-buffer.ts';
import { printJson } from '../../src/report/json.ts';
import { buildSheet, testModel } from '../support/model.ts';

const judged = (name: string, buffer = makeBuffer()): string => {
	const line: Line = { text: JSON.stringify({ ...buildSheet('boosted'), name }), line: 1, buffer };
	const { buffer: filled, length } = judgeLine(testModel(), line, { date: '2026-05-01' });
	return Buffer.from(filled.buffer, 0, length).toString();
};

test.each(['plain', 'caf\u00e9', 'a\u007fb', 'a\u200b\u009bb', '\u{e0041} and \u{1f600}'])(
	'a sheet named %j comes as a line of JSON that no terminal obeys',
	name => {
		const line = judged(name);
		expect(line.endsWith('\n')).toBe(true);
		expect(JSON.parse(line).sheet).toBe(name);
		expect(line.slice(0, -1)).toBe(printJson(JSON.parse(line)));
	},
);

test('a line that does not fit into its buffer gets a larger one', () => {
	const small = makeBuffer(1000);
	expect(judged('plain', small)).toBe(judged('plain'));
	for (const text of ['', 'abcdef', 'abcdefg', 'abcdefgh', 'a\u00e9\u{1f600}', '\u20ac\u20ac\u20ac'])
		expect(Buffer.from(fill(makeBuffer(7), text).buffer.buffer, 0, fill(makeBuffer(7), text).length).toString()).toBe(
			`${text}\n`,
		);
});
