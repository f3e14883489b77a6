import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { commandTable, everyCommand } from '../../src/cli/command-table.ts';
import { exit } from '../../src/cli/process/exit.ts';

const page = readFileSync(fileURLToPath(new URL('../../dist/swap-audit.1', import.meta.url)), 'utf8');
const lines = page.trimEnd().split('\n');

describe('the manual page', () => {
	test('has the chapters that such a page has, in their order', () => {
		const chapters = lines.filter(line => line.startsWith('.Sh ')).map(line => line.slice(4));
		expect(chapters).toEqual(['NAME', 'SYNOPSIS', 'DESCRIPTION', 'COMMANDS', 'ENVIRONMENT', 'EXIT STATUS', 'EXAMPLES']);
	});

	test('shows every command and each of its options, and nothing that is hidden', () => {
		const program = commandTable(() => {});
		for (const command of everyCommand(program)) {
			if (command === program) continue;
			const path = [command.parent === program ? '' : command.parent!.name(), command.name()].join(' ').trim();
			if (path === 'complete') {
				expect(lines).not.toContain('.Ss complete');
				continue;
			}
			const start = lines.indexOf(`.Ss ${path}`);
			expect(start, path).toBeGreaterThan(0);
			const end = lines.findIndex((line, at) => at > start && /^\.S[sh] /.test(line));
			const chapter = lines.slice(start, end).join('\n').replaceAll('\\-', '-');
			for (const { long } of command.options) expect(chapter, path).toContain(`.It Fl ${long!.slice(1)}`);
		}
	});

	test('shows every exit status', () => {
		for (const status of Object.values(exit)) expect(lines).toContain(`.It ${status}`);
	});

	test('uses known requests alone, and closes every list', () => {
		const requests = lines.filter(line => /^[.']/.test(line)).map(line => line.split(' ')[0]);
		const known = ['.Ar', '.Bl', '.Dd', '.Dl', '.Dt', '.El', '.It', '.Nd', '.Nm', '.Op', '.Os', '.Pp', '.Sh', '.Ss'];
		expect([...new Set(requests)].sort()).toEqual(known);
		expect(requests.filter(each => each === '.Bl').length).toBe(requests.filter(each => each === '.El').length);
	});
});
