import type { Sheet } from './sheet.ts';

/** Lists of records that the program keeps: a record a line. */
const listed: ReadonlySet<string> = new Set(['audits', 'logs']);

/**
 * A sheet as text: an answer a line, so that a version control system shows what changed and a hand can edit it.
 * Keys keep their order.
 */
export function writeSheet(sheet: Sheet): string {
	const { answers, ...top } = sheet;
	const held = Object.entries(top).filter(([, value]) => value !== undefined);
	const lines = held.map(([key, value]) => {
		if (!listed.has(key) || !Array.isArray(value)) return `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`;
		const records = value.map(record => `    ${JSON.stringify(record)}`);
		return records.length === 0 ? `  "${key}": []` : `  "${key}": [\n${records.join(',\n')}\n  ]`;
	});
	const sections = Object.entries(answers).map(([section, inside]) => {
		const rows = Object.entries(inside).map(
			([name, answer]) => `      ${JSON.stringify(name)}: ${JSON.stringify(answer)}`,
		);
		return `    ${JSON.stringify(section)}: ${rows.length === 0 ? '{}' : `{\n${rows.join(',\n')}\n    }`}`;
	});
	const body = sections.length === 0 ? '  "answers": {}' : `  "answers": {\n${sections.join(',\n')}\n  }`;
	const auditsAt = lines.findIndex(line => line.startsWith('  "audits"'));
	lines.splice(auditsAt < 0 ? lines.length : auditsAt, 0, body);
	return `{\n${lines.join(',\n')}\n}\n`;
}
