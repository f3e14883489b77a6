import { expect, test } from 'vitest';
import { strayWords } from '../../../src/build/check-words.ts';
import { wordFinder } from '../../../src/rulebook/compile/glossary.ts';

const terms = [
	{ term: 'firewall', meaning: '', not: ['bulkhead'], except: ['bulkhead fitting'] },
	{ term: 'gasoline', meaning: '', not: ['petrol'], except: [] },
	{ term: 'driveshaft', meaning: '', not: ['propeller shaft'], except: [] },
];
const find = wordFinder(terms);

test.each([
	['through the bulkhead.', 'bulkhead', 'firewall'],
	['Petrol sprays', 'Petrol', 'gasoline'],
	['a propeller shaft, long', 'propeller shaft', 'driveshaft'],
])('%s', (text, found, term) => expect(find(text)).toEqual({ found, term }));

test.each(['a bulkhead fitting', 'petrol-e10', '{fuel.petrol_kind}', 'driveline.petrol', 'petroleum'])(
	'%s stays: an id, or another word',
	text => expect(find(text)).toBeNull(),
);

test('documents and texts of the program keep to it', () => {
	expect(strayWords(process.cwd(), terms)).toEqual([]);
});
