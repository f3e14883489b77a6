import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { command, runCommand } from '../support/command.ts';
import { temporaryFolder } from '../support/folder.ts';

/** What bash offers for the words typed so far, in a folder with a sheet, another file, a folder and one named sheet. */
function offeredByBash(...words: string[]): string[] {
	const home = temporaryFolder();
	for (const folder of ['bin', 'swap-audit', 'here', 'here/sub']) mkdirSync(join(home, folder));
	symlinkSync(command, join(home, 'bin', 'swap-audit'));
	for (const file of ['swap-audit/Shed pickup.json', 'here/my car.json', 'here/photo.jpg']) {
		writeFileSync(join(home, file), '{}');
	}
	const script = 'source <(swap-audit completion bash); COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _swap_audit';
	const show = `printf '%s\\n' "\${COMPREPLY[@]}" | sort`;
	const out = execFileSync('bash', ['-c', `${script}; ${show}`, 'bash', 'swap-audit', ...words], {
		cwd: join(home, 'here'),
		encoding: 'utf8',
		env: { PATH: `${join(home, 'bin')}:${process.env.PATH}`, LC_ALL: 'C', HOME: home, XDG_DATA_HOME: home },
	});
	return out.trimEnd().split('\n');
}

test('bash completes commands, choices and ids', () => {
	expect(offeredByBash('reche')).toEqual(['recheck']);
	expect(offeredByBash('audit', 'car.json', '--units', 'm')).toEqual(['metric']);
	expect(offeredByBash('audit', '--units', '=', 'm')).toEqual(['metric']);
	expect(offeredByBash('rules', 'show', 'ignition.gap-too')).toEqual(['ignition.gap-too-wide']);
});

test('bash completes a sheet by name, by path and through folders, with spaces in both', () => {
	expect(offeredByBash('audit', '')).toEqual(['Shed pickup', 'my car.json', 'sub'].sort());
	expect(offeredByBash('audit', 'Shed\\ p')).toEqual(['Shed pickup']);
	expect(offeredByBash('audit', '"my c')).toEqual(['my car.json']);
});

test('bash takes the script without complaint', () => {
	const { status, stderr } = spawnSync('bash', ['-n'], {
		input: runCommand(['completion', 'bash']).out,
		encoding: 'utf8',
	});
	expect(stderr).toBe('');
	expect(status).toBe(0);
});

test.each([
	['zsh', /^#compdef swap-audit$/m],
	['fish', /^complete -c swap-audit .*__swap_audit_complete/m],
])('the script for %s declares itself, asks the program, and closes what it opens', (shell, declared) => {
	const { out } = runCommand(['completion', shell]);
	expect(out).toMatch(declared);
	expect(out).toMatch(/swap-audit complete -- /);
	const code = out.replaceAll(/^\s*#.*$/gm, '');
	const count = (sign: RegExp) => (code.match(sign) ?? []).length;
	if (shell === 'fish') expect(count(/^\s*(function|if|for) /gm)).toBe(count(/^\s*end$/gm));
	else {
		expect(count(/^\s*case .* in$/gm)).toBe(count(/^\s*esac$/gm));
		expect(count(/; do$/gm)).toBe(count(/^\s*done$/gm));
		expect(count(/\{/g)).toBe(count(/\}/g));
	}
});

test('no script lists a command: the table is the one place', () => {
	for (const shell of ['bash', 'zsh', 'fish']) {
		expect(runCommand(['completion', shell]).out).not.toMatch(/recheck|readings|quantities/);
	}
});
