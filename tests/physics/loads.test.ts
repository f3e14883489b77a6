import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

// Tables are worked out while a file loads. A table that cannot be read must fail a test, not the finding of the tests.
const rooms = ['physics', 'units', 'units/tables'].map(room =>
	fileURLToPath(new URL(`../../src/${room}`, import.meta.url)),
);
const files = rooms.flatMap(room =>
	readdirSync(room)
		.filter(name => name.endsWith('.ts'))
		.map(name => [name, `${room}/${name}`]),
);

test.each(files)('%s loads by itself', async (_, path) => {
	await expect(import(path!)).resolves.toBeTypeOf('object');
});
