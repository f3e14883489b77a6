import { writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { makeModel } from '../audit/model.ts';
import { sha256 } from '../cli/assets/hash.ts';
import { readTexts } from '../files/packs.ts';
import { quantities } from '../log/quantities.ts';
import { preparedNames } from '../plugs/name-search.ts';
import { compileRulebook } from '../rulebook/compile/compile.ts';
import { writeProblem } from '../rulebook/compile/source.ts';
import { withoutAnswer } from './check-builds.ts';
import { withoutAnswers } from './check-examples.ts';
import { strayWords } from './check-words.ts';

/**
 * Compiles rules/; called by the build with that folder and the one to write to. What an audit mostly does not read goes into
 * files of its own: what plugs are read by, and what only `rules test` and packs need (examples, named builds).
 */
const [folder, out] = process.argv.slice(2) as [string, string];
const texts = readTexts(folder, ['.yaml']).map(({ path, text }) => ({ path: relative(folder, path), text }));
const { rulebook, problems } = compileRulebook(texts, quantities);
refuse([
	...problems.map(problem => writeProblem({ ...problem, path: join(folder, problem.path) })),
	...strayWords(join(folder, '..'), rulebook.words),
]);
const model = makeModel(rulebook, sha256);
refuse([...withoutAnswers(rulebook.rules), ...withoutAnswer(model, texts)].map(fault => join(folder, fault)));
const { builds, rules, vocabulary, ...others } = rulebook;
const examples = Object.fromEntries(rules.map(rule => [rule.id, rule.examples]));
const bare = { ...others, words: [], builds: {}, rules: rules.map(rule => ({ ...rule, examples: [] })) };
writeFileSync(join(out, 'rulebook.json'), JSON.stringify({ ...bare, fingerprint: model.fingerprint }));
writeFileSync(join(out, 'vocabulary.json'), JSON.stringify({ ...vocabulary, search: preparedNames(vocabulary) }));
writeFileSync(join(out, 'words.json'), JSON.stringify(rulebook.words));
writeFileSync(join(out, 'examples.json'), JSON.stringify({ builds, examples }));

function refuse(faults: readonly string[]): void {
	if (faults.length === 0) return;
	console.error(faults.join('\n'));
	process.exit(1);
}
