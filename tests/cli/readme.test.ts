import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { commandTable } from '../../src/cli/command-table.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';

const readme = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8');

test('the rule pack that README shows compiles, and its examples hold', () => {
	const [, pack] = /```yaml\n(.*?)```/s.exec(readme)!;
	const path = join(temporaryFolder(), 'pack.yaml');
	writeFileSync(path, pack!);
	const { out, err, status } = runCommand(['rules', 'test', path]);
	expect(err).toBe('');
	expect(out).toMatch(/^\d+ rules, \d+ examples, 0 wrong\n$/);
	expect(status).toBe(0);
});

test('README names commands and options that there are', () => {
	const calls = [...readme.matchAll(/`swap-audit (\w+)([^`]*)`/g)];
	expect(calls.length).toBeGreaterThan(15);
	for (const [call, name, rest] of calls) {
		if (name === 'COMMAND') continue;
		const command = commandTable(() => {}).commands.find(each => each.name() === name);
		expect(command, call).toBeDefined();
		const [below] = rest!.trim().split(' ');
		const called = command!.commands.find(each => each.name() === below) ?? command!;
		const options = [...called.options.map(({ long }) => long), '--help'];
		for (const [option] of rest!.matchAll(/--[\w-]+/g)) expect(options, call).toContain(option);
	}
});
