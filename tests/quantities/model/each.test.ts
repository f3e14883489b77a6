import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { quantities } from '../../../src/quantities/all.ts';

/** Tests that run through quantities without working one out. */
const sweeping = /^(all|any-sheet|design|monotone|other-units|reached)/;

test('every quantity is worked out by another way in some test', () => {
	const folders = ['..', '../../outside', '.'].map(folder => fileURLToPath(new URL(folder, import.meta.url)));
	const tests = folders.flatMap(folder =>
		readdirSync(folder)
			.filter(name => name.endsWith('.ts') && !sweeping.test(name))
			.map(name => readFileSync(`${folder}/${name}`, 'utf8')),
	);
	const named = (id: string) => tests.some(text => text.includes(`'${id}'`));
	expect(quantities.filter(({ id, kind }) => kind !== 'hidden' && !named(id)).map(({ id }) => id)).toEqual([]);
});
