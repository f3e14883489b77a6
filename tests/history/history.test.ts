import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { checkSheet } from '../../src/sheet/check.ts';
import { parseSheet } from '../../src/sheet/parse.ts';
import { testModel } from '../support/model.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));

test.each(readdirSync(folder).filter(name => name.endsWith('.json')))('a sheet of %s opens for ever', name => {
	const { sheet } = checkSheet(parseSheet(readFileSync(`${folder}${name}`, 'utf8')), testModel().rulebook.questions);
	expect(Object.keys(sheet.answers).length).toBeGreaterThan(5);
});
