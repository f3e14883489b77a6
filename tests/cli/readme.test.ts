import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { commandTable } from '../../src/cli/command-table.ts';
import { runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';

const textOf = (path: string) => readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
const readme = textOf('README.md');

test("the rule pack that the rules' README shows compiles, and its examples hold", () => {
	const [, pack] = /```yaml\n(.*?)```/s.exec(textOf('rules/README.md'))!;
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

test('the output that README shows is what the program prints', () => {
	const [, shown] = /```\n\$ swap-audit audit (.*?)```/s.exec(readme)!;
	const [sheet, ...lines] = shown!.split('\n');
	const { out } = runCommand(['audit', sheet!, '--date', '2026-04-01']);
	const printed = new Set(out.split('\n'));
	expect(lines.filter(line => line !== '...' && !printed.has(line))).toEqual([]);
	expect(lines.length).toBeGreaterThan(10);
});

test('what README links to is there, and is shipped', () => {
	const { files } = JSON.parse(textOf('package.json')) as { files: string[] };
	const links = [...readme.matchAll(/\]\(([^)#]+)\)/g)].map(([, path]) => path!);
	expect(links.length).toBeGreaterThan(6);
	for (const path of links) {
		expect(textOf(path).length, path).toBeGreaterThan(100);
		expect(
			files.some(each => matchesGlob(path, each) || path.startsWith(`${each}/`)),
			path,
		).toBe(true);
	}
});

const matchesGlob = (path: string, glob: string): boolean =>
	new RegExp(`^${glob.replaceAll('.', '\\.').replaceAll('*', '[^/]*')}$`).test(path);
