import { writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import { makeGraph } from '../quantities/graph.ts';
import { quantities } from '../quantities/model/all.ts';
import { textsUnder } from '../files/packs.ts';
import { compileRulebook } from '../rulebook/compile/compile.ts';
import { writeProblem } from '../rulebook/compile/source.ts';

/** Compiles rules/ to one JSON file; called by the build with the folder and the file to write. */
const [folder, file] = process.argv.slice(2) as [string, string];
const { rulebook, problems } = compileRulebook(
	textsUnder(folder, ['.yaml']).map(({ path, text }) => ({ path: relative(folder, path), text })),
	quantities,
);
if (problems.length > 0) {
	console.error(problems.map(writeProblem).join('\n'));
	process.exit(1);
}
makeGraph(rulebook.questions, quantities);
writeFileSync(file, JSON.stringify(rulebook));
