import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { pictureOf } from './rooms.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const text = readFileSync(`${root}DEVELOPERS.md`, 'utf8');

test('the picture of the rooms is what they import', () => {
	expect(text).toContain(pictureOf(`${root}src`));
});

test('every room of src is in the table', () => {
	const table = text.slice(text.indexOf('## Rooms'), text.indexOf('```mermaid'));
	for (const { name } of readdirSync(`${root}src`, { withFileTypes: true }).filter(entry => entry.isDirectory()))
		expect(table).toContain(`\`${name}\``);
});

test('every dependency is there with its reason', () => {
	const { dependencies, devDependencies } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
	const table = text.slice(text.indexOf('| package | why'), text.indexOf('The lock file'));
	for (const name of Object.keys({ ...dependencies, ...devDependencies })) {
		const family = name.replace(/(?<=^@types\/|^@stryker-mutator\/|^mdast-util-).*/, '*');
		expect(
			[name, family].some(each => table.includes(each)),
			name,
		).toBe(true);
	}
});
